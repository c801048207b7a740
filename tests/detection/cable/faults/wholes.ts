import { leastRise, mostRise, nameOf, planFault, type Recipe } from '../fault.ts';
import { seek, tryOut } from '../mildStroke.ts';
import { rubFor, rubMore, tellSide } from './rises.ts';

/** Far above its rated current from its first stroke on: racks or cables that carry what rollers should. */
export const heavyFromNew: Recipe = {
  name: 'heavy-from-new',
  needs: (random) => ({ rated: true, overRated: random.uniform(1.6, 2.4) }),
  draw: ({ room }) => {
    const label = {
      kind: 'heavy-room',
      severity: room.sides[0].runAmps / (room.facts.ratedAmps ?? 1),
      side: room.sides.length === 1 ? 'main' : null,
    } as const;
    return planFault('heavy-from-new', 0, label, () => {});
  },
};

/** A block under the floor, or a controller that takes a hard place for the stop: the next press takes it to its end. */
export const stopsShort: Recipe = {
  name: 'stops-short',
  needs: () => ({ wholeRecord: true }),
  draw: ({ random, onset }) => {
    const way = random.pick(['extend', 'retract'] as const);
    const missing = random.uniform(0.1, 0.35);
    const often = random.pick([1, 1, 0.7]);
    const label = { kind: 'short-travel', severity: missing, direction: way } as const;
    return planFault('stops-short', onset, label, (condition, _index, lived, own) => {
      const bears = own.chance(often);
      const place = way === 'extend' ? 1 - missing : missing;
      const isBefore = way === 'extend' ? condition.from < place : condition.from > place;
      if (bears && isBefore && lived.direction === way) condition.blockedAt = place;
    });
  },
};

/** Something has stood in the way since: neither stroke has its whole travel any more. */
export const standsShort: Recipe = {
  name: 'stands-short',
  needs: () => ({ wholeRecord: true }),
  draw: ({ random, onset }) => {
    const missing = random.uniform(0.12, 0.4);
    return planFault(
      'stands-short',
      onset,
      { kind: 'short-travel', severity: missing },
      (condition, _index, lived) => {
        if (lived.direction === 'extend') condition.blockedAt = 1 - missing;
        condition.from = Math.min(condition.from, 1 - missing);
      },
    );
  },
};

/** A battery at its end, with a converter that is broken. */
export const tiredBattery: Recipe = {
  name: 'tired-battery',
  needs: () => ({ supply: true }),
  draw: ({ room, random, onset }) => {
    const wanted = random.uniform(0.76, 0.845) * room.facts.nominalVolts;
    const open = random.uniform(0.96, 1) * room.facts.nominalVolts;
    const volts = (times: number) =>
      tryOut(room, 'extend', (condition) => {
        condition.openVolts = open;
        condition.batteryOhm = times;
      }).volts;
    const times = seek(1, 60, -wanted, (each) => -volts(each));
    if (times === null) return null;
    const label = { kind: 'weak-supply', severity: 1 - wanted / room.facts.nominalVolts } as const;
    return planFault('tired-battery', onset, label, (condition, _index, _lived, own) => {
      condition.openVolts = open + own.normal(0, 0.05);
      condition.batteryOhm = times;
      condition.rippleVolts = 0;
    });
  },
};

/** A contact that has burnt: on some strokes it takes two volts and more. */
export const burntContact: Recipe = {
  name: 'burnt-contact',
  needs: () => ({ supply: true }),
  draw: ({ room, random, onset }) => {
    const wanted = random.uniform(0.76, 0.84) * room.facts.nominalVolts;
    const volts = (ohm: number) =>
      tryOut(room, 'extend', (condition) => {
        condition.openVolts = room.facts.nominalVolts * 1.03;
        condition.contactOhm = ohm;
      }).volts;
    const ohm = seek(0, 1.5, -wanted, (each) => -volts(each));
    if (ohm === null) return null;
    const label = { kind: 'weak-supply', severity: 1 - wanted / room.facts.nominalVolts } as const;
    return planFault('burnt-contact', onset, label, (condition, _index, _lived, own) => {
      if (!own.chance(0.55)) return;
      condition.contactOhm = ohm;
      condition.openVolts = room.facts.nominalVolts * 1.03;
    });
  },
};

/** Work that helped for a while: it climbs again, faster than it did before. */
export const rebound: Recipe = {
  name: 'rebound',
  needs: () => ({}),
  draw: ({ room, life, random, onset }) => {
    const at = room.sides.length === 1 ? 0 : null;
    const most = Math.min(0.8, mostRise(room));
    const first = random.uniform(0.3, 0.45);
    const before = Math.round(life.length * random.uniform(0.22, 0.3));
    const rate = first / before;
    const again = rate * random.uniform(3, 5);
    const starts = Math.min(onset, Math.round(life.length * 0.3));
    const serviced = starts + before;
    const rub = rubFor(room, at, most);
    if (rub === null || most < first || leastRise(room) > first) return null;
    if (again * (life.length - serviced) < 0.4) return null;
    const kind = random.pick(['lubricated', 'cleaned', 'adjusted'] as const);
    const label = { kind: 'draw-rebound', severity: again, alsoFits: ['rising-draw'] as const } as const;
    const planned = planFault(
      'rebound',
      starts,
      { ...label, side: nameOf(room, at), onsetStroke: serviced },
      (condition, index) => {
        const rise = index < serviced ? rate * (index - starts) : 0.03 + again * (index - serviced);
        rubMore(condition, at, (rub * Math.min(most, rise)) / most);
      },
      { beforeStroke: serviced, kind },
    );
    return planned;
  },
};

/** Cured by a service, and back after a while at one go. */
export const curedAndBack: Recipe = {
  name: 'cured-and-back',
  needs: () => ({}),
  draw: ({ room, life, random, onset }) => {
    const most = mostRise(room);
    if (most < 0.35) return null;
    const rise = random.uniform(0.35, Math.min(0.9, most));
    const at = room.sides.length === 1 ? 0 : random.pick([0, 1, null]);
    const rub = rubFor(room, at, rise);
    const starts = Math.min(onset, Math.round(life.length * 0.5));
    const serviced = starts + random.integer(14, 24);
    const back = serviced + random.integer(14, 26);
    if (rub === null) return null;
    const told = tellSide(room, at, (condition) => rubMore(condition, at, rub));
    if (told === null) return null;
    const label = {
      kind: 'rising-draw',
      severity: rise,
      side: told.side,
      alsoFits: [...told.alsoFits, 'draw-rebound'],
    } as const;
    return planFault(
      'cured-and-back',
      starts,
      label,
      (condition, index) => {
        if (index < serviced || index >= back) rubMore(condition, at, rub);
      },
      { beforeStroke: serviced, kind: 'cleaned' },
    );
  },
};
