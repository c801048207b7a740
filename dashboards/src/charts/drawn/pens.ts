import type uPlot from 'uplot';

/** Small drawing helpers. Places are in the canvas's own pixels: `pixels(n)` turns page pixels into them. */
export const pixels = (n: number): number => n * devicePixelRatio;

/** Draws within the plot's own area and leaves the pen as it was. */
export function inside(u: uPlot, paint: (pen: CanvasRenderingContext2D) => void): void {
  const { left, top, width, height } = u.bbox;
  u.ctx.save();
  u.ctx.beginPath();
  u.ctx.rect(left, top, width, height);
  u.ctx.clip();
  // The library leaves the dash of its last line in the pen.
  u.ctx.setLineDash([]);
  paint(u.ctx);
  u.ctx.restore();
}

export function triangle(
  pen: CanvasRenderingContext2D,
  x: number,
  y: number,
  size: number,
  up: boolean,
): void {
  const tip = up ? -size : size;
  pen.beginPath();
  pen.moveTo(x, y + tip);
  pen.lineTo(x - size, y - tip * 0.7);
  pen.lineTo(x + size, y - tip * 0.7);
  pen.closePath();
}

export function dot(pen: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
}

/** Words over a picture: on a rim of its ground, so that what they lie over does not run through them. */
export function writeOver(
  pen: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  ground: string,
): void {
  pen.save();
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineWidth = pixels(4);
  pen.strokeStyle = ground;
  pen.strokeText(text, x, y);
  pen.restore();
  pen.fillText(text, x, y);
}

export const fontOf = (sizePx: number): string => `${pixels(sizePx)}px system-ui, sans-serif`;
