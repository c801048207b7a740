import { describe, expect, it } from 'vitest';
import { Random } from '../../../server/demo/simulator/random.ts';
import { copperOhms } from '../../detection/winding/copper.ts';
import { drawRoom } from '../../detection/winding/drawRoom.ts';
import { driveStroke } from '../../detection/winding/driveStroke.ts';
import { drawMember } from '../../detection/winding/fleet.ts';
import type { WindingRoom } from '../../detection/winding/room.ts';
import { steadyAmps } from '../../detection/winding/sizing.ts';
import { ordinaryStroke } from '../../detection/winding/strokeState.ts';
import { emptyTape, STEP_S } from '../../detection/winding/tape.ts';

const cold = new Float64Array([20, 20]);

function tapeFor(room: WindingRoom) {
  return emptyTape(room.motors.length, 2.5 * room.durationS + 12);
}

describe('the winding fleet', () => {
  it('makes copper of 100 ohm into 139.3 ohm by 100 kelvin (IEC 60028)', () => {
    expect(copperOhms(100, 120)).toBeCloseTo(139.3, 9);
    expect(copperOhms(100, 20)).toBe(100);
  });

  it('draws volts by ohms when the room stands at its stop', () => {
    const room = drawRoom(new Random(3), { sides: 1, endings: ['hand'] });
    const state = { ...ordinaryStroke(room, 'extend'), releaseS: 2 };
    const tape = driveStroke(room, state, cold, tapeFor(room));
    const [motor] = room.motors;
    const last = tape.steps - 20;
    const ohms = copperOhms(motor.ohmsAt20C, tape.endWindingC[0]) + motor.leadOhms;
    let amps = 0;
    for (let step = last - 40; step < last; step++) amps = Math.max(amps, tape.motorAmps[0][step]);
    expect(amps / (tape.volts[last - 20] / ohms)).toBeCloseTo(1, 1);
    expect(tape.endPosition[0]).toBe(1);
  });

  it('runs at the speed that is left of the volts: (V - I R) / Ke', () => {
    const room = drawRoom(new Random(5), { sides: 1, endings: ['hand'] });
    const tape = driveStroke(room, ordinaryStroke(room, 'extend'), cold, tapeFor(room));
    const [motor] = room.motors;
    const middle = Math.floor(tape.steps / 2);
    const moved = (tape.positions[0][middle + 20] - tape.positions[0][middle]) * room.travelMetres;
    const left =
      tape.volts[middle] - tape.motorAmps[0][middle] * (copperOhms(motor.ohmsAt20C, 25) + motor.leadOhms);
    expect(moved / (20 * STEP_S) / (left / motor.newtonsPerAmp)).toBeCloseTo(1, 1);
  });

  it('strikes once every teeth times pitch of the travel where a tooth is broken', () => {
    const { room, fault } = drawMember(21, 'broken-tooth', 60);
    const side = room.facts.sides.indexOf(fault!.label.side!);
    const currents = (withFault: boolean) => {
      const state = ordinaryStroke(room, 'extend');
      if (withFault) fault!.bear(state, fault!.startsStroke, new Random(1));
      const tape = driveStroke(room, state, cold, tapeFor(room));
      return byPosition(tape.positions[side], tape.motorAmps[side], tape.steps);
    };
    const healthy = currents(false);
    const rise = currents(true).map((amps, cell) => amps - healthy[cell]);
    const highest = Math.max(...rise.slice(100, 900));
    const strikes = [];
    for (let cell = 30; cell < 970; cell++) {
      const around = rise.slice(cell - 8, cell + 9);
      if (rise[cell] > highest / 3 && rise[cell] === Math.max(...around)) strikes.push(cell / 1000);
    }
    const turnMetres = (room.facts.gearTeeth! * room.facts.rackPitchMm!) / 1000;
    expect(strikes.length).toBeGreaterThanOrEqual(Math.floor((room.travelMetres * 0.85) / turnMetres));
    for (let turn = 1; turn < strikes.length; turn++) {
      const metres = (strikes[turn] - strikes[turn - 1]) * room.travelMetres;
      expect(metres / turnMetres).toBeCloseTo(1, 1);
    }
  });

  it('draws more for more friction, and more against a slope than down it', () => {
    const room = drawRoom(new Random(9), { sides: 2, pacings: ['pwm'] });
    const [level] = steadyAmps(room, () => {});
    const [rough] = steadyAmps(room, (state) => {
      for (const side of state.sides) side.coulomb = 1.5;
    });
    const [up] = steadyAmps(room, (state) => {
      state.tiltRadians = -0.01;
    });
    const [down] = steadyAmps(room, (state) => {
      state.tiltRadians = 0.01;
    });
    expect(rough).toBeGreaterThan(1.1 * level);
    expect(up).toBeGreaterThan(level);
    expect(down).toBeLessThan(level);
  });

  it('holds two motors in step where the controller does so', () => {
    for (const pacing of ['pwm', 'pause'] as const) {
      const room = drawRoom(new Random(13), { sides: 2, pacings: [pacing], endings: ['hand'] });
      const state = ordinaryStroke(room, 'extend');
      state.sides[0].coulomb = 1.4;
      const tape = driveStroke(room, state, cold, tapeFor(room));
      let most = 0;
      for (let step = 0; step < tape.steps; step++) {
        most = Math.max(most, Math.abs(tape.positions[0][step] - tape.positions[1][step]));
      }
      expect(most * room.travelMetres).toBeLessThan(1.5 * room.controller.leadMetres);
    }
  });
});

/** The greatest current in each thousandth of the travel. */
function byPosition(positions: Float64Array, amps: Float64Array, steps: number): number[] {
  const cells = new Array<number>(1001).fill(0);
  for (let step = 200; step < steps; step++) {
    const cell = Math.max(0, Math.min(1000, Math.round(positions[step] * 1000)));
    cells[cell] = Math.max(cells[cell], amps[step]);
  }
  for (let cell = 1; cell <= 1000; cell++) if (cells[cell] === 0) cells[cell] = cells[cell - 1];
  return cells;
}
