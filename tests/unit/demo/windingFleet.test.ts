import { describe, expect, it } from 'vitest';
import { Random } from '../../../server/demo/simulator/random.ts';
import { copperOhms } from '../../detection/winding/copper.ts';
import { drawRoom } from '../../detection/winding/drawRoom.ts';
import { driveStroke } from '../../detection/winding/driveStroke.ts';
import { drawMember, drawWindingFleet } from '../../detection/winding/fleet.ts';
import { windingHistory } from '../../detection/winding/history.ts';
import type { WindingRoom } from '../../detection/winding/room.ts';
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

  it('tells the same life for the same seed and another for another', () => {
    const tell = (seed: number) => JSON.stringify([...windingHistory(drawMember(seed, null, 6))]);
    expect(tell(11)).toBe(tell(11));
    expect(tell(11)).not.toBe(tell(12));
    const names = (seed: number) => drawWindingFleet(seed, 6, 60).map(({ fault }) => fault?.name ?? null);
    expect(names(1)).toEqual(names(1));
    expect(names(1).filter((name) => name === null)).toHaveLength(3);
  });
});
