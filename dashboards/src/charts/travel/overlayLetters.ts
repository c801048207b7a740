import type uPlot from 'uplot';
import { fontOf, inside, pixels, writeOver } from '../drawn/pens.ts';
import type { ChartTheme } from '../plot/theme.ts';
import type { Overlay } from './profileLine.ts';

/** Each line of a stroke that was laid over has its letter, each at a place of its own in what is seen. */
export function drawLetters(u: uPlot, overlays: readonly Overlay[], theme: ChartTheme): void {
  const { min, max } = u.scales.x;
  const count = overlays.reduce((sum, { lines }) => sum + lines.length, 0);
  let at = 0;
  inside(u, (pen) => {
    pen.font = fontOf(12);
    pen.textBaseline = 'middle';
    pen.textAlign = 'center';
    for (const [i, { letter, lines }] of overlays.entries()) {
      pen.fillStyle = theme.overlays[i];
      for (const { profile } of lines) {
        const place = (min ?? 0) + ((at + 0.5) / count) * ((max ?? 1) - (min ?? 0));
        at += 1;
        const bin = Math.min(profile.length - 1, Math.max(0, Math.floor(place * profile.length)));
        const amps = profile[bin];
        if (amps === null || amps === undefined) continue;
        const x = u.valToPos((bin + 0.5) / profile.length, 'x', true);
        writeOver(pen, letter, x, u.valToPos(amps, 'y', true) - pixels(8), theme.surface);
      }
    }
  });
}
