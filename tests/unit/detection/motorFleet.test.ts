import { describe, expect, test } from 'vitest';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import { type HistoryEvent, simulateHistory } from '../../../server/demo/simulator/simulateHistory.ts';
import { drawFleet } from '../../detection/motor/drawFleet.ts';
import { FAULTS } from '../../detection/motor/faults/index.ts';

const ROOM_ID = '01890a5d-ac96-774b-bcce-b302099a8057';

function told(member: ReturnType<typeof drawFleet>[number]): HistoryEvent[] {
  return [...simulateHistory(member.room, member.plan, member.seed)];
}

describe('a fleet', () => {
  const fleet = drawFleet(3, FAULTS.length, { strokes: 30, faultyPart: 1 });

  test('bears every fault in turn', () => {
    const kinds = fleet.map((member) => member.fault?.label.kind);
    expect(kinds).toEqual(FAULTS.map((fault) => fault.kind));
  });

  test('does not depend on how many members are drawn', () => {
    expect(drawFleet(3, 4).map((member) => member.room)).toEqual(
      drawFleet(3, 9)
        .slice(0, 4)
        .map((member) => member.room),
    );
  });

  test.each(fleet.map((member, place) => [FAULTS[place].name, member] as const))(
    '%s: strokes in time order, in turn out and in, each accepted by the decoder',
    (_name, member) => {
      const strokes = told(member).filter((event) => event.type === 'stroke');
      expect(strokes).toHaveLength(30);
      let last = 0;
      for (const { atMs, index, condition, stroke } of strokes) {
        expect(atMs).toBeGreaterThan(last);
        last = atMs;
        expect(condition.direction).toBe(index % 2 === 0 ? 'extend' : 'retract');
        const decoded = decodeStroke(
          JSON.parse(JSON.stringify({ ...stroke, key: `${index}`, roomId: ROOM_ID })),
          '',
        );
        expect(decoded.startedAtMs).toBe(atMs);
      }
    },
  );

  test('a fault changes the strokes from its onset on and none before', () => {
    const member = fleet.find(({ fault }) => fault?.name === 'proud-fastener');
    if (!member?.fault) throw new RangeError('the fleet has no proud fastener');
    const healthy = told({ ...member, plan: { ...member.plan, faults: [] } });
    const { onsetStroke } = member.fault.label;
    const pairs = told(member).map((event, place) => [event, healthy[place]] as const);
    for (const [faulty, plain] of pairs) {
      if (faulty.type !== 'stroke' || faulty.index > onsetStroke) continue;
      if (faulty.index < onsetStroke) expect(faulty).toEqual(plain);
      else expect(faulty).not.toEqual(plain);
    }
  });
});
