import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Move } from './moves.ts';
import type { WindingRoom } from './room.ts';
import type { Supply } from './strokeState.ts';
import { DAY_MS, type Variants } from './variants.ts';

/** Where the coach stands for some days. */
export interface Camp {
  /** Along the travel, positive: the room runs out downhill. */
  readonly tiltRadians: number;
  /** What lies in the room, as a factor on its weight. */
  readonly weight: number;
  /** How it was set up and levelled: a twist in the frame that the guides feel, by side. */
  readonly friction: readonly number[];
  readonly source: 'battery' | 'shore' | 'engine';
  /** Volts at rest of the battery, and of the charger. */
  readonly batteryVolts: number;
  readonly chargerVolts: number;
  /** How much warmer or colder than the season. */
  readonly weatherC: number;
}

/** A degree or so of slope is what levelling leaves. */
const TILT_DEGREES = 0.35;

export function drawCamp(room: WindingRoom, random: Random): Camp {
  const { wiring } = room;
  const together = random.normal(0, room.campSpread);
  const chance = random.uniform(0, 1);
  return {
    tiltRadians: (Math.max(-1, Math.min(1, random.normal(0, TILT_DEGREES))) * Math.PI) / 180,
    weight: random.normal(1, 0.008),
    friction: room.motors.map(() => Math.exp(together + random.normal(0, room.campSpread * 0.5))),
    source:
      chance < wiring.shorePart
        ? 'shore'
        : chance < wiring.shorePart + wiring.enginePart
          ? 'engine'
          : 'battery',
    batteryVolts: random.uniform(12.3, 12.75),
    chargerVolts: random.uniform(13.2, 13.7),
    weatherC: Math.max(-9, Math.min(9, random.normal(0, 4))),
  };
}

/** The supply of one stroke at a camp: lead-acid cells, which are half as good again at -20 °C. */
export function supplyAt(
  room: WindingRoom,
  camp: Camp,
  move: Move,
  variants: Variants,
  ambientC: number,
): Supply {
  const { batteryOhms, sharedCableOhms, chargerAmps } = room.wiring;
  const scale = room.facts.nominalVolts / 12;
  const low = within(variants.lowBattery, move.index);
  const strong = within(variants.strongCharger, move.index);
  const restVolts = scale * (low?.volts ?? camp.batteryVolts);
  const coldOhms = batteryOhms * (1 + 0.02 * Math.max(0, 20 - ambientC));
  const isCharged = low === null && (strong !== null || camp.source !== 'battery');
  const chargerVolts = scale * (strong?.volts ?? (camp.source === 'engine' ? 14.1 : camp.chargerVolts));
  return {
    sourceVolts: isCharged ? chargerVolts : restVolts,
    sourceOhms: isCharged ? 0.004 * scale : coldOhms,
    sourceLimitAmps: isCharged ? chargerAmps : Number.POSITIVE_INFINITY,
    batteryVolts: restVolts + 0.3 * scale,
    batteryOhms: coldOhms,
    cableOhms: sharedCableOhms,
  };
}

/** Warm summers, mild winters (who goes camping in the frost is a variant of its own), warmer after noon. */
export function ambientAt(camp: Camp, move: Move, variants: Variants): number {
  const day = move.atMs / DAY_MS;
  const { coldSnap } = variants;
  const isFrost = coldSnap !== null && day >= coldSnap.fromDay && day <= coldSnap.toDay;
  const season = 16 + 10 * Math.sin((2 * Math.PI * (day - 110)) / 365.25);
  const hour = 4 * Math.sin(2 * Math.PI * ((day % 1) - 0.4));
  return (isFrost ? coldSnap.ambientC + 0.4 * camp.weatherC : season + camp.weatherC) + hour;
}

function within<Span extends { readonly from: number; readonly to: number }>(
  span: Span | null,
  index: number,
): Span | null {
  return span !== null && index >= span.from && index <= span.to ? span : null;
}
