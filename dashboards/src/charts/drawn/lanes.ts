import type uPlot from 'uplot';
import { strokeWords } from '../../words/stroke.ts';
import type { ChartTheme } from '../plot/theme.ts';
import { fontOf, pixels } from './pens.ts';

export const LANE_PX = 14;

export type Phase = 'inrush' | 'running' | 'endStop' | 'pause';

/** From where to where a phase lasted, in the picture's own unit: seconds, or part of the travel. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly phase: Phase;
}

function fillOf(phase: Phase, theme: ChartTheme): string {
  switch (phase) {
    case 'inrush':
      return theme.phaseInrush;
    case 'running':
      return theme.phaseRunning;
    case 'endStop':
      return theme.phaseEndStop;
    case 'pause':
      return theme.surface;
  }
}

/** A lane above the picture for each side, in which its phases stand. `lane` counts from the picture upwards. */
export function drawLane(
  u: uPlot,
  lane: number,
  of: readonly Stretch[],
  colour: string,
  theme: ChartTheme,
): void {
  const pen = u.ctx;
  const { left, width, top } = u.bbox;
  const y = top - pixels(LANE_PX) * (lane + 1);
  const height = pixels(LANE_PX - 3);
  pen.save();
  pen.beginPath();
  pen.rect(left, y - 1, width, height + 2);
  pen.clip();
  pen.setLineDash([]);
  for (const stretch of of) {
    const x = u.valToPos(stretch.from, 'x', true);
    const wide = u.valToPos(stretch.to, 'x', true) - x;
    pen.fillStyle = fillOf(stretch.phase, theme);
    pen.fillRect(x, y, wide, height);
    pen.strokeStyle = colour;
    pen.lineWidth = pixels(1);
    pen.strokeRect(x, y, wide, height);
    pen.font = fontOf(10);
    const word = strokeWords.phases[stretch.phase];
    // In the middle of what is seen of it: who looks closer sees a part.
    const begins = Math.max(x, left);
    const seen = Math.min(x + wide, left + width) - begins;
    if (pen.measureText(word).width + pixels(6) > seen) continue;
    pen.fillStyle = theme.ink;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(word, begins + seen / 2, y + height / 2);
  }
  pen.restore();
}
