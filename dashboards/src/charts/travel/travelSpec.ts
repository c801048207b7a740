import type uPlot from 'uplot';
import { percent } from '../../format.ts';
import { numberAxis, uprightAxis } from '../drawn/axes.ts';
import { drawLane, LANE_PX } from '../drawn/lanes.ts';
import { drawMark, markedRange } from '../drawn/marks.ts';
import { inside } from '../drawn/pens.ts';
import type { PlotLibrary, PlotSpec } from '../plot/drawPlot.ts';
import { type ChartTheme, lookOf } from '../plot/theme.ts';
import { upperThird } from '../time/timeSpec.ts';
import { drawLetters } from './overlayLetters.ts';
import type { ProfileLine } from './profileLine.ts';
import { drawNormal, drawTurns } from './travelGround.ts';
import { highest } from './travelHeight.ts';
import type { TravelPicture } from './travelPicture.ts';
import { BESIDE, stretches } from './travelStretches.ts';

/** Median current of every side by travel position, over every sample, over the normal. */
export function travelSpec(picture: TravelPicture, theme: ChartTheme, library: PlotLibrary): PlotSpec {
  const { sides, travel } = picture;
  const lookFor = (side: string) => lookOf(theme, Math.max(0, sides.indexOf(side)));
  const top = highest(picture);
  return {
    data: library.join(tablesOf(picture)),
    options: {
      padding: [8 + LANE_PX * (travel?.sides ?? []).length, null, null, null],
      scales: {
        x: { time: false, range: wholeTravel },
        // An inrush three times as high as all else must not press all else flat: it may leave the picture.
        y: { range: (u) => markedRange(u, 0, top, 'y') },
        volts: { range: upperThird },
      },
      axes: axesOf(picture, theme),
      cursor: { y: false, points: { show: false }, drag: { x: true, y: false } },
      series: seriesOf(picture, theme, lookFor),
      hooks: {
        drawClear: [(u) => drawGround(u, picture, theme, lookFor)],
        draw: [(u) => drawOnTop(u, picture, theme, lookFor)],
      },
    },
  };
}

type LookFor = (side: string) => ReturnType<typeof lookOf>;

/** What is drawn as lines, in the order of `seriesOf`: the sides, strokes laid over them, samples, supply. */
function tablesOf({ lines, overlays, travel }: TravelPicture): uPlot.AlignedData[] {
  const supply = travel?.supply ?? null;
  const bySample = (positions: readonly number[], values: uPlot.AlignedData[1]): uPlot.AlignedData => [
    strictlyRising(positions),
    values,
  ];
  return [
    ...lines.map(({ profile }) => byPlace(profile)),
    ...overlays.flatMap(({ lines: theirs }) => theirs.map(({ profile }) => byPlace(profile))),
    ...(travel?.sides ?? []).map(({ positions, amps }) => bySample(positions, amps)),
    ...(supply === null ? [] : [bySample(supply.positions, supply.volts)]),
  ];
}

function axesOf({ travel }: TravelPicture, theme: ChartTheme): uPlot.Axis[] {
  const axes = [numberAxis(theme, percent), uprightAxis(theme, 'A')];
  if ((travel?.supply ?? null) === null) return axes;
  return [...axes, { ...uprightAxis(theme, 'V'), scale: 'volts', side: 1, grid: { show: false } }];
}

/** How the lines of `tablesOf` look, behind an empty one for the places themselves. */
function seriesOf(
  { lines, overlays, travel }: TravelPicture,
  theme: ChartTheme,
  lookFor: LookFor,
): uPlot.Series[] {
  const hasSupply = (travel?.supply ?? null) !== null;
  return [
    {},
    ...lines.map(({ side }) => ({ ...penOf(lookFor(side)), width: 2.25 })),
    // A stroke is told by its colour, and its side by the dash that this has everywhere.
    ...overlays.flatMap(({ lines: theirs }, i) =>
      theirs.map(({ side }) => ({
        ...penOf({ ...lookFor(side), colour: theme.overlays[i] }),
        width: 1.25,
      })),
    ),
    ...(travel?.sides ?? []).map(({ side }) => ({
      stroke: lookFor(side).colour,
      width: 0.75,
      alpha: 0.45,
      points: NONE,
    })),
    ...(hasSupply ? [{ scale: 'volts', stroke: theme.supply, width: 1.5, dash: [1, 3], points: NONE }] : []),
  ];
}

/** Below the lines: what is normal, and the turns of the gear. */
function drawGround(u: uPlot, { normal, turns }: TravelPicture, theme: ChartTheme, lookFor: LookFor): void {
  for (const [side, band] of normal) drawNormal(u, band, lookFor(side));
  drawTurns(u, turns, theme);
}

/** Above the lines: a lane for each side, the letters of the strokes laid over, and the marks. */
function drawOnTop(
  u: uPlot,
  { travel, overlays, marks }: TravelPicture,
  theme: ChartTheme,
  lookFor: LookFor,
): void {
  for (const [lane, of] of [...(travel?.sides ?? [])].reverse().entries()) {
    drawLane(u, lane, stretches(of), lookFor(of.side).colour, theme);
  }
  drawLetters(u, overlays, theme);
  inside(u, (pen) => {
    for (const mark of marks) {
      const at = { x: u.valToPos(mark.position, 'x', true), y: u.valToPos(mark.amps, 'y', true) };
      drawMark(pen, at, mark, { colour: lookFor(mark.side).colour, ground: theme.surface });
    }
  });
}

const NONE: uPlot.Series.Points = { show: false };

function penOf({ colour, dash }: ReturnType<typeof lookOf>): uPlot.Series {
  return { stroke: colour, dash: [...dash], points: NONE };
}

function byPlace(profile: ProfileLine['profile']): uPlot.AlignedData {
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
