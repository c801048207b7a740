/**
 * A worm and its wheel as a screw: what turning it takes for a load along the travel, with friction angle `φ` and lead
 * angle `λ`, is `tan(φ + λ) / tan λ` when it drives and `tan(φ - λ) / tan λ` when the load would drive it.
 */
export interface Screw {
  /** Tangent of the lead angle. */
  readonly lead: number;
  /** Friction of the flanks on a full film at 20 °C. */
  readonly filmFriction: number;
  /** What dry contact adds at standstill. */
  readonly contactFriction: number;
  /** Travel speed at which half of that contact is lifted off. */
  readonly liftMetresPerS: number;
}

/** Friction of the flanks at a speed; `stiffness` is what the temperature makes of the film, 1 at 20 °C. */
export function flankFriction(screw: Screw, metresPerS: number, stiffness: number): number {
  const lifted = metresPerS / screw.liftMetresPerS;
  return screw.filmFriction * stiffness + screw.contactFriction / (1 + lifted * lifted);
}

/** The effort that a load of 1 asks of the motor. */
export function drivingEffort(screw: Screw, friction: number): number {
  return (screw.lead + friction) / ((1 - friction * screw.lead) * screw.lead);
}

/** The effort that a load of 1 asks that pushes the way the motor goes: below 0 where it helps. */
export function holdingEffort(screw: Screw, friction: number): number {
  return (friction - screw.lead) / ((1 + friction * screw.lead) * screw.lead);
}
