import type uPlot from 'uplot';
import type { NormalSide, SideTravel, TravelTrace } from '../api/types.ts';
import { percent } from '../format.ts';
import { numberAxis, uprightAxis } from './axes.ts';
import { drawLane, LANE_PX, type Stretch } from './lanes.ts';
import { drawMark, markedRange, type NumberedMark } from './marks.ts';
import type { PlotLibrary, PlotSpec } from './Plot.tsx';
import { fontOf, inside, pixels, writeOver } from './pens.ts';
import { type ChartTheme, lookOf } from './theme.ts';
import { upperThird } from './timeSpec.ts';
import { drawNormal, drawTurns } from './travelGround.ts';

type Profile = readonly (number | null)[];

/** A stroke's usual current by place, for one side. */
export interface ProfileLine {
  readonly side: string;
  readonly profile: Profile;
}

/** Another stroke laid over this one. */
export interface Overlay {
  readonly letter: string;
  readonly lines: readonly ProfileLine[];
}

export interface TravelPicture {
  /** All sides of the room, in its order: a side's place in it is its look. */
  readonly sides: readonly string[];
  readonly lines: readonly ProfileLine[];
  readonly travel: TravelTrace | null;
  readonly normal: ReadonlyMap<string, NormalSide>;
  readonly overlays: readonly Overlay[];
  readonly marks: readonly NumberedMark[];
  /** Places where the gear has made another whole turn, 0 to 1; empty where gear or travel is not known. */
  readonly turns: readonly number[];
}

/** The end stop has no extent along the travel: it is shown as a block beside its end. */
const BESIDE = 0.025;

/** Median current of every side by travel position, over every sample, over the normal. */
export function travelSpec(picture: TravelPicture, theme: ChartTheme, library: PlotLibrary): PlotSpec {
  const { sides, lines, travel, normal, overlays, marks, turns } = picture;
  const lookFor = (side: string) => lookOf(theme, Math.max(0, sides.indexOf(side)));
  const samples = travel?.sides ?? [];
  const supply = travel?.supply ?? null;
  const laid = overlays.flatMap(({ lines: theirs }) => theirs);
  const tables: uPlot.AlignedData[] = [
    ...lines.map(({ profile }) => byPlace(profile)),
    ...laid.map(({ profile }) => byPlace(profile)),
    ...samples.map(({ positions, amps }): uPlot.AlignedData => [strictlyRising(positions), amps]),
    ...(supply === null ? [] : [[strictlyRising(supply.positions), supply.volts] as uPlot.AlignedData]),
  ];
  const top = highest(picture);
  const lanes = samples.map(({ side }) => side);
  return {
    data: library.join(tables),
    options: {
      padding: [8 + LANE_PX * lanes.length, null, null, null],
      scales: {
        x: { time: false, range: wholeTravel },
        // An inrush three times as high as all else must not press all else flat: it may leave the picture.
        y: { range: (u) => markedRange(u, 0, top, 'y') },
        volts: { range: upperThird },
      },
      axes: [
        numberAxis(theme, percent),
        uprightAxis(theme, 'A'),
        ...(supply === null
          ? []
          : [{ ...uprightAxis(theme, 'V'), scale: 'volts', side: 1 as const, grid: { show: false } }]),
      ],
      cursor: { y: false, points: { show: false }, drag: { x: true, y: false } },
      series: [
        {},
        ...lines.map(({ side }) => ({ ...penOf(lookFor(side)), width: 2.25 })),
        // A stroke is told by its colour, and its side by the dash that this has everywhere.
        ...overlays.flatMap(({ lines: theirs }, i) =>
          theirs.map(({ side }) => ({
            ...penOf({ ...lookFor(side), colour: theme.overlays[i] }),
            width: 1.25,
          })),
        ),
        ...samples.map(({ side }) => ({
          stroke: lookFor(side).colour,
          width: 0.75,
          alpha: 0.45,
          points: NONE,
        })),
        ...(supply === null
          ? []
          : [{ scale: 'volts', stroke: theme.supply, width: 1.5, dash: [1, 3], points: NONE }]),
      ],
      hooks: {
        drawClear: [
          (u) => {
            for (const [side, band] of normal) drawNormal(u, band, lookFor(side));
            drawTurns(u, turns, theme);
          },
        ],
        draw: [
          (u) => {
            for (const [lane, of] of [...samples].reverse().entries()) {
              drawLane(u, lane, stretches(of), lookFor(of.side).colour, theme);
            }
            drawLetters(u, overlays, theme);
            inside(u, (pen) => {
              for (const mark of marks) {
                const x = u.valToPos(mark.position, 'x', true);
                drawMark(
                  pen,
                  x,
                  u.valToPos(mark.amps, 'y', true),
                  mark,
                  lookFor(mark.side).colour,
                  theme.surface,
                );
              }
            });
          },
        ],
      },
    },
  };
}

const NONE: uPlot.Series.Points = { show: false };

function penOf({ colour, dash }: ReturnType<typeof lookOf>): uPlot.Series {
  return { stroke: colour, dash: [...dash], points: NONE };
}

function byPlace(profile: Profile): uPlot.AlignedData {
  return [profile.map((_, bin) => (bin + 0.5) / profile.length), [...profile]];
}

const wholeTravel: uPlot.Range.Function = (_, min, max) =>
  min <= 0.01 && max >= 0.99 ? [-BESIDE, 1 + BESIDE] : [min, max];

/** The library takes no place twice. A room that stands still is at one place for many samples. */
function strictlyRising(positions: readonly number[]): number[] {
  let last = Number.NEGATIVE_INFINITY;
  return positions.map((position) => {
    last = position > last ? position : last + 1e-7;
    return last;
  });
}

/** The highest current that must be seen: everything but the inrush. */
function highest({ lines, travel, normal, overlays, marks }: TravelPicture): number {
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

/** One side's phases by place. */
function stretches({ inrushEnd, endStop, pauses }: SideTravel): Stretch[] {
  const outward = inrushEnd < 0.5;
  const sorted = (from: number, to: number, phase: Stretch['phase']): Stretch => ({
    from: Math.min(from, to),
    to: Math.max(from, to),
    phase,
  });
  const [begin, end, beyond] = outward ? [0, 1, 1 + BESIDE] : [1, 0, -BESIDE];
  return [
    sorted(begin, inrushEnd, 'inrush'),
    sorted(inrushEnd, end, 'running'),
    ...(endStop === null ? [] : [sorted(end, beyond, 'endStop')]),
    ...pauses.map((place) => sorted(place - 0.004, place + 0.004, 'pause')),
  ];
}

/** Each line of a stroke that was laid over has its letter, each at a place of its own in what is seen. */
function drawLetters(u: uPlot, overlays: readonly Overlay[], theme: ChartTheme): void {
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
