import type { Direction } from '../../../../analysis/trace.ts';
import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Plant } from '../plant.ts';
import { dragFor, type FaultKind, firstFrom, isPair, stallAmps } from './fault.ts';

/** What no healthy drive needs, where nobody has written down what this one may: amperes a side. */
const TOO_MUCH = { one: 52, pair: 21 };
const MUCH_PART = 1.75;

function heavyAmps(plant: Plant): number {
  const { ratedAmps } = plant.facts;
  if (ratedAmps !== null) return MUCH_PART * ratedAmps;
  return isPair(plant) ? TOO_MUCH.pair : TOO_MUCH.one;
}

/** The racks carry the room, from its first stroke on. */
export const heavyRoom: FaultKind = {
  name: 'heavy-room',
  fits: (plant) => {
    const { limitAmps } = plant.controller;
    const most = 1.15 * heavyAmps(plant);
    return most < 0.45 * stallAmps(plant, 0) && (limitAmps === null || most < 0.8 * limitAmps);
  },
  draw: ({ plant, random }) => {
    const side = isPair(plant) && random.chance(0.4) ? random.integer(0, 1) : null;
    const amps = heavyAmps(plant) * random.uniform(1, 1.15);
    const part = (at: number) => Math.max(0, amps / plant.sides[at].runningAmps - 1);
    return {
      startsStroke: 0,
      label: labelOf(0, {
        kind: 'heavy-room',
        severity: part(side ?? 0),
        side: side === null ? namedSide(plant, null) : plant.sides[side].name,
      }),
      worsen: (condition) => {
        condition.supplyOhms *= 0.6;
        condition.sides.forEach((own, at) => {
          if (side === null || side === at) own.dragNewtons += dragFor(plant, at, part(at));
        });
      },
    };
  },
};

function blocked(name: string, way: Direction, low: number, high: number): FaultKind {
  return {
    name,
    fits: () => true,
    draw: ({ plant, planned, random, onset }) => {
      const block = random.uniform(low, high);
      const reverses = plant.controller.kind !== 'relays' && random.chance(0.5);
      const from = firstFrom(planned, onset, ({ direction }) => direction === way);
      const severity = way === 'extend' ? 1 - block : block;
      return {
        startsStroke: from,
        label: labelOf(from, { kind: 'short-travel', severity, direction: way }),
        worsen: (condition, { direction }) => {
          if (direction !== way) return;
          condition.block = block;
          condition.reverses = reverses;
        },
      };
    },
  };
}

export const blockedOut = blocked('blocked-out', 'extend', 0.75, 0.93);
export const blockedIn = blocked('blocked-in', 'retract', 0.07, 0.22);

/** A controller that has lost count and stops before the stop. */
export const earlyLimit: FaultKind = {
  name: 'early-limit',
  fits: ({ controller }) => controller.kind === 'step',
  draw: ({ planned, random, onset }) => {
    const limitAt = random.uniform(0.78, 0.93);
    const from = firstFrom(planned, onset, ({ direction }) => direction === 'extend');
    return {
      startsStroke: from,
      label: labelOf(from, { kind: 'short-travel', severity: 1 - limitAt, direction: 'extend' }),
      worsen: (condition, { direction }) => {
        if (direction === 'extend') condition.limitAt = limitAt;
      },
    };
  },
};

const totalAmps = ({ sides }: Plant) => sides.reduce((sum, { runningAmps }) => sum + runningAmps, 0);

/** No charger any more, and a battery that holds nothing. */
export const tiredBattery: FaultKind = {
  name: 'tired-battery',
  fits: ({ logger }) => logger.supply !== null,
  draw: ({ plant, random, onset }) => {
    const volts = random.uniform(9.1, 10.1) * (plant.facts.nominalVolts / 12);
    return {
      startsStroke: onset,
      label: labelOf(onset, { kind: 'weak-supply', severity: volts }),
      worsen: (condition, _stroke, _index, chances) => {
        const open = volts + condition.supplyOhms * totalAmps(plant) + chances.normal(0, 0.12);
        condition.openVolts = Math.min(condition.openVolts, open);
      },
    };
  },
};

/** A corroded terminal between the battery and the room. */
export const corrodedFeed: FaultKind = {
  name: 'corroded-feed',
  fits: ({ logger, supply }) => logger.supply !== null && supply.habit === 'camper',
  draw: ({ plant, random, onset, planned }) => {
    const scale = plant.facts.nominalVolts / 12;
    const dropVolts = random.uniform(2.5, 3.3) * scale;
    const over = random.integer(1, 25);
    const drop = (index: number) => dropVolts * Math.min(1, (index - onset + 1) / over);
    const weak = planned.findIndex(
      ({ source, chargeVolts }, index) =>
        index >= onset && source === 'battery' && 12.2 + chargeVolts - drop(index) / scale < 10.4,
    );
    return {
      startsStroke: onset,
      label: labelOf(weak === -1 ? onset : weak, { kind: 'weak-supply', severity: dropVolts }),
      worsen: (condition, _stroke, index) => {
        condition.supplyOhms += drop(index) / totalAmps(plant);
      },
    };
  },
};
