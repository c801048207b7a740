/** The course of a stroke as it is simulated, in even steps, for as long as it takes. */
export class StrokeTape {
  readonly amps: Float64Array[];
  readonly positions: Float64Array[];
  volts: Float64Array;
  steps = 0;

  constructor(sides: number, expectedSteps: number) {
    this.amps = Array.from({ length: sides }, () => new Float64Array(expectedSteps));
    this.positions = Array.from({ length: sides }, () => new Float64Array(expectedSteps));
    this.volts = new Float64Array(expectedSteps);
  }

  /** Begins the next step; the sides' values of it are then set by index `steps - 1`. */
  begin(volts: number): void {
    if (this.steps === this.volts.length) this.#grow();
    this.volts[this.steps++] = volts;
  }

  set(side: number, amps: number, position: number): void {
    this.amps[side][this.steps - 1] = amps;
    this.positions[side][this.steps - 1] = position;
  }

  #grow(): void {
    const longer = (series: Float64Array): Float64Array => {
      const grown = new Float64Array(series.length * 2);
      grown.set(series);
      return grown;
    };
    this.volts = longer(this.volts);
    for (const side of this.amps.keys()) {
      this.amps[side] = longer(this.amps[side]);
      this.positions[side] = longer(this.positions[side]);
    }
  }
}
