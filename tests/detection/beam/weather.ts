import type { PlannedStroke } from './calendar.ts';
import { Random } from './random.ts';

/** Air where the coach stands, °C, by stroke; with cold snaps of one camp or two. */
export class Weather {
  private readonly mean: number;
  private readonly swing: number;
  private readonly spread: number;
  private readonly snaps: { camp: number; camps: number; dropC: number }[];

  private readonly seed: number;

  constructor(seed: number, watched: boolean, camps: number) {
    this.seed = seed;
    const random = Random.of(seed, 21);
    this.mean = random.between(12, 20);
    // A coach whose logger has no thermometer follows the sun, so that its seasons do not look like wear.
    this.swing = watched ? random.between(5, 12) : random.between(2, 5);
    this.spread = watched ? 4 : 2.5;
    const snaps = random.chance(0.6) ? random.whole(1, 3) : 0;
    this.snaps = Array.from({ length: snaps }, () => ({
      camp: random.whole(6, Math.max(7, camps - 2)),
      camps: random.whole(1, 2),
      dropC: random.between(12, 22),
    }));
  }

  at({ atMs, camp }: PlannedStroke): number {
    const random = Random.of(this.seed, 30_000 + camp);
    const days = atMs / 86_400_000;
    const season = -this.swing * Math.cos((2 * Math.PI * (days - 20)) / 365.25);
    const hour = (days % 1) * 24;
    const day = 3 * Math.cos((2 * Math.PI * (hour - 15)) / 24);
    const snap = this.snaps.find((each) => camp >= each.camp && camp < each.camp + each.camps);
    const air = this.mean + season + day + this.spread * random.normal() - (snap?.dropC ?? 0);
    return Math.min(38, Math.max(-14, air));
  }
}
