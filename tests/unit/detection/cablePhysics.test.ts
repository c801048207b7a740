import { describe, expect, it } from 'vitest';
import { Random } from '../../../server/demo/simulator/random.ts';
import { beginBreaker } from '../../detection/cable/breaker.ts';
import { drawRoom, type RoomNeeds } from '../../detection/cable/drawRoom.ts';
import { driveStroke, type Tape } from '../../detection/cable/driveStroke.ts';
import { drawCableFleet } from '../../detection/cable/fleet.ts';
import { measureTape, mildCondition, tryOut } from '../../detection/cable/mildStroke.ts';
import type { CableRoom, Controller, Gearing } from '../../detection/cable/room.ts';
import { STEP_S } from '../../detection/cable/step.ts';

/** A bare switch, so that nothing but the motor and the room is seen. */
const BARE: Controller = {
  softStartS: 0,
  softStopMetres: 0,
  stopAmps: null,
  stopAfterS: 0.3,
  limitAmps: null,
  limitSwitches: false,
  sync: 'none',
  leadMetres: 0.01,
  breaker: null,
};

function roomOn(
  gearing: Gearing,
  seed = 4,
  needs: RoomNeeds = {},
  controller: Partial<Controller> = {},
): CableRoom {
  const drawn = drawRoom(new Random(seed), { ...needs, gearings: [gearing] });
  return { ...drawn, controller: { ...BARE, ...controller } };
}

function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += values[at];
  return sum / (to - from);
}

function metresAt(tape: Tape, step: number, room: CableRoom): number {
  return tape.positions[0][step] * room.travelMetres;
}

describe('the cable fleet', () => {
  it('pushes as hard as it rubs while it runs: k (I - I0) is what the room takes', () => {
    for (const gearing of ['drum', 'ram', 'cross-shaft'] as const) {
      const drawn = roomOn(gearing);
      const room = { ...drawn, topperNewtons: 0, topperNewtonsPerMetre: 0, cantilever: 0 };
      const [side] = room.sides;
      const { runAmps } = tryOut({ ...room, sides: [{ ...side, waves: [] }] }, 'extend', () => {});
      const pull = side.newtonsPerAmp * (runAmps[0] - side.idleAmps);
      const taken = side.rollingNewtons + side.wiperNewtons + side.greaseNewtons;
      expect(pull / taken).toBeCloseTo(1, 1);
    }
  });

  it('draws volts by ohms once it stands, and turns at what is left of the volts before', () => {
    const room = roomOn('ram');
    const [side] = room.sides;
    const tape = driveStroke(room, 'extend', { ...mildCondition(room, 'extend'), holdS: 3 });
    const ohm = (tape.volts[tape.steps - 2] - 0) / tape.amps[0][tape.steps - 2] - room.supply.leadOhm;
    const warm = side.ohmAt20C * (1 + 0.00393 * (18 + tape.warmC[0] - 20));
    expect(ohm / warm).toBeCloseTo(1, 1);
    const middle = Math.floor(tape.steps / 2);
    const speed = (metresAt(tape, middle + 40, room) - metresAt(tape, middle, room)) / (40 * STEP_S);
    const left = tape.volts[middle] - tape.amps[0][middle] * side.ohmAt20C;
    expect(speed / (left / side.voltsPerMetreSecond)).toBeCloseTo(1, 1);
  });

  it('takes up the slack of a cable before the room moves, and only after a reversal', () => {
    const drawn = roomOn('drum');
    const room = { ...drawn, sides: [{ ...drawn.sides[0], slackMetres: 0.02 }] };
    const movesAfter = (reversed: boolean) => {
      const tape = driveStroke(room, 'extend', { ...mildCondition(room, 'extend'), reversed });
      return tape.positions[0].findIndex((position) => position * room.travelMetres > 0.001) * STEP_S;
    };
    const slackS = 0.02 / room.speed;
    expect(movesAfter(true) - movesAfter(false)).toBeGreaterThan(0.5 * slackS);
    expect(movesAfter(true) - movesAfter(false)).toBeLessThan(1.6 * slackS);
  });

  it('draws more uphill than down, and more out than in under a topper', () => {
    const drawn = roomOn('rack');
    const room = { ...drawn, topperNewtons: 0, topperNewtonsPerMetre: 0, retractPart: 1 };
    const run = (one: CableRoom, way: 'extend' | 'retract', tiltRadians: number) =>
      tryOut(one, way, (condition) => {
        condition.tiltRadians = tiltRadians;
      }).runAmps[0];
    const level = run(room, 'extend', 0);
    expect(run(room, 'extend', -0.008)).toBeGreaterThan(1.03 * level);
    expect(run(room, 'extend', 0.008)).toBeLessThan(0.97 * level);
    expect(run(room, 'retract', 0.008)).toBeGreaterThan(1.03 * run(room, 'retract', 0));
    const under = { ...room, topperNewtons: 0.2 * room.sides[0].rollingNewtons };
    expect(run(under, 'extend', 0)).toBeGreaterThan(1.03 * run(under, 'retract', 0));
  });

  it('stiffens with cold, and holds its seals after a long stay', () => {
    const room = roomOn('drum');
    const mild = tryOut(room, 'extend', () => {});
    const cold = tryOut(room, 'extend', (condition) => {
      condition.ambientC = -10;
    });
    expect(cold.runAmps[0]).toBeGreaterThan(1.03 * mild.runAmps[0]);
    const stiff = { ...room, sealSet: 0.5, bulbNewtons: room.sides[0].rollingNewtons };
    const early = (stayDays: number) => {
      const { tape } = tryOut(stiff, 'extend', (condition) => {
        condition.stayDays = stayDays;
      });
      const leaves = tape.positions[0].findIndex((position) => position > 0.002);
      return Math.max(...tape.amps[0].slice(Math.max(0, leaves - 20), leaves + 1));
    };
    expect(early(60)).toBeGreaterThan(early(0.1));
  });

  it('holds a side back that leads, by pulses or by its duty', () => {
    for (const sync of ['pulses', 'duty'] as const) {
      const room = roomOn('side-by-side', 8, {}, { sync, leadMetres: 0.008 });
      const loose = { ...room, boxNewtonsPerMetre: room.sides[0].rollingNewtons };
      const most = (one: CableRoom) => {
        const { tape } = tryOut(one, 'extend', (condition) => {
          condition.sides[1].rolling *= 1.5;
        });
        let lead = 0;
        for (let step = 0; step < tape.steps; step++) {
          lead = Math.max(lead, Math.abs(tape.positions[0][step] - tape.positions[1][step]));
        }
        return lead * one.travelMetres;
      };
      expect(most(loose)).toBeLessThan(0.03);
      expect(most({ ...loose, controller: BARE })).toBeGreaterThan(1.5 * most(loose));
    }
  });

  it('keeps to its limit of current, and ends a stroke by itself at the stall', () => {
    const drawn = roomOn('ram', 11);
    const stallAmps = drawn.facts.nominalVolts / drawn.sides[0].ohmAt20C;
    const limited = {
      ...drawn,
      controller: { ...BARE, limitAmps: 0.6 * stallAmps, stopAmps: 0.55 * stallAmps },
    };
    const { tape, endsS } = tryOut(limited, 'extend', () => {});
    expect(Math.max(...tape.amps[0])).toBeLessThanOrEqual(0.6 * stallAmps + 1e-9);
    expect(tape.positions[0][tape.steps - 1]).toBeGreaterThan(0.995);
    expect(tape.steps * STEP_S - endsS[0]).toBeLessThan(2);
  });

  it('opens a breaker that is warm and closes it once it has cooled', () => {
    const breaker = beginBreaker({ holdAmps: 10, warmingS: 5 });
    const states: boolean[] = [];
    for (let step = 0; step < 4000; step++) {
      breaker.warm(breaker.isOpen() ? 0 : 20, STEP_S);
      states.push(breaker.isOpen());
    }
    const opens = states.indexOf(true);
    expect(opens * STEP_S).toBeCloseTo(5 * Math.log(4 / 3), 1);
    const closes = states.indexOf(false, opens);
    expect((closes - opens) * STEP_S).toBeCloseTo(5 * Math.log(1 / 0.55), 1);
    const never = beginBreaker({ holdAmps: 10, warmingS: 5 });
    for (let step = 0; step < 4000; step++) never.warm(9.9, STEP_S);
    expect(never.isOpen()).toBe(false);
  });

  it('strikes once every turn of the pulley where it has a flat', () => {
    const room = { ...roomOn('drum', 6), turnMetres: 0.12 };
    const amps = (newtons: number) => {
      const { tape } = tryOut(room, 'extend', (condition) => {
        condition.sides[0].turnBump = { newtons, widthMetres: 0.008, phaseMetres: 0.05 };
      });
      return tape;
    };
    const [sound, flat] = [amps(0), amps(2 * room.sides[0].rollingNewtons)];
    const strikes: number[] = [];
    for (let metres = 0.06; metres < room.travelMetres - 0.05; metres += 0.001) {
      const rise = (at: number) =>
        ampsAt(flat, at / room.travelMetres) - ampsAt(sound, at / room.travelMetres);
      const around = Array.from({ length: 41 }, (_, near) => rise(metres + (near - 20) * 0.001));
      if (around[20] > 0.15 * room.sides[0].runAmps && around[20] === Math.max(...around))
        strikes.push(metres);
    }
    expect(strikes.length).toBeGreaterThanOrEqual(Math.floor((room.travelMetres - 0.15) / 0.12));
    for (let turn = 1; turn < strikes.length; turn++) {
      expect(Math.abs(strikes[turn] - strikes[turn - 1] - 0.12)).toBeLessThan(0.008);
    }
  });

  it('moves the whole room from end to end in a time that suits it', () => {
    for (const { room } of drawCableFleet(3, 8, 90)) {
      const { endsS, tape } = measureTape(driveStroke(room, 'retract', mildCondition(room, 'retract')));
      expect(tape.positions[0][tape.steps - 1]).toBeLessThan(0.01);
      expect(endsS[0]).toBeGreaterThan(0.6 * (room.travelMetres / room.speed));
      expect(endsS[0]).toBeLessThan(1.8 * (room.travelMetres / room.speed) + 3);
      expect(meanOf(tape.amps[0], 100, 200)).toBeGreaterThan(0.3);
    }
  });
});

function ampsAt(tape: Tape, position: number): number {
  const step = tape.positions[0].findIndex((reached) => reached >= position);
  return step < 0 ? 0 : tape.amps[0][step];
}
