/** Rises of one side's running current and stall currents over the latest strokes, natural logarithm. */
export interface ScaleMemory {
  running: number[];
  inrush: number[];
  endStop: number[];
  duration: number[];
}
