import type { SideTravel } from '../../api/types.ts';
import type { TravelPicture } from './travelPicture.ts';

/** The highest current that must be seen: everything but the inrush. */
export function highest({ lines, travel, normal, overlays, marks }: TravelPicture): number {
  const profiles = [...lines, ...overlays.flatMap((overlay) => overlay.lines)].map(({ profile }) => profile);
  const bands = [...normal.values()].map(({ upper }) => upper);
  const running = (travel?.sides ?? []).map((of) => of.amps.filter((_, i) => isRunning(of, of.positions[i])));
  const all = [...profiles, ...bands, ...running, marks.map(({ amps }) => amps)];
  return all.reduce(
    (top, values) => values.reduce<number>((high, amps) => Math.max(high, amps ?? 0), top),
    1,
  );
}

function isRunning({ inrushEnd, endStop }: SideTravel, position: number): boolean {
  const extends_ = inrushEnd < 0.5;
  const started = extends_ ? position > inrushEnd : position < inrushEnd;
  const stopped = endStop !== null && (extends_ ? position >= endStop - 0.005 : position <= endStop + 0.005);
  return started && !stopped;
}
