import { parseArgs } from 'node:util';
import { median } from '../../analysis/statistics/median.ts';
import { playLot } from './modelLot.ts';

const { values } = parseArgs({
  options: {
    lots: { type: 'string', default: '4' },
    siblings: { type: 'string', default: '20' },
    arrivals: { type: 'string', default: '12' },
    strokes: { type: 'string', default: '30' },
    times: { type: 'string', default: '1.4' },
    weight: { type: 'string', default: '0.04' },
    scale: { type: 'string', default: '0.02' },
    seed: { type: 'string', default: '2026' },
  },
});

/** Plays seeded lots of coaches of one model with healthy and faulty arrivals, and prints how each was judged. */
function main(): void {
  const options = {
    siblings: Number(values.siblings),
    arrivals: Number(values.arrivals),
    strokes: Number(values.strokes),
    times: Number(values.times),
    weightSpread: Number(values.weight),
    scaleSpread: Number(values.scale),
  };
  const total = { healthy: 0, lent: 0, alone: 0, faulty: 0, found: 0, rightSide: 0 };
  for (let lot = 0; lot < Number(values.lots); lot++) {
    const { healthy, faulty, rooms } = playLot(Number(values.seed) + lot, options);
    const learnt = healthy.map(
      ({ lent }) => lent.strokes.findIndex((stroke) => stroke.verdict !== 'learning') + 1,
    );
    const falseLent = healthy.flatMap(({ lent }) => lent.warnings);
    const falseAlone = healthy.flatMap(({ alone }) => alone.warnings);
    const heavy = faulty.map(({ warnings }) =>
      warnings.find(({ warning }) => warning.kind === 'heavy-room' || warning.kind === 'uneven-sides'),
    );
    const found = heavy.filter((one) => one !== undefined && one.openedAt < 8);
    total.healthy += healthy.length;
    total.lent += falseLent.length;
    total.alone += falseAlone.length;
    total.faulty += faulty.length;
    total.found += found.length;
    total.rightSide += found.filter((one) => one?.warning.side === 'front').length;
    console.log(
      `lot ${lot}: ${rooms} rooms lend; past learning at stroke ${median(learnt)} (latest ${Math.max(...learnt)}); ` +
        `false: ${falseLent.length} lent, ${falseAlone.length} alone; found ${found.length} of ${faulty.length} at stroke ` +
        `${found.length > 0 ? median(found.map((one) => (one?.openedAt ?? 0) + 1)) : '-'}`,
    );
    for (const [name, list] of [
      ['lent', falseLent],
      ['alone', falseAlone],
    ] as const) {
      for (const { warning, openedAt } of list)
        console.log(
          `  false, ${name}: ${warning.kind} ${warning.side ?? ''} at stroke ${openedAt + 1}: ${warning.headline}`,
        );
    }
  }
  const years = (total.healthy * options.strokes) / 60;
  console.log(
    `${total.healthy} healthy arrivals, ${years} room-years: ${total.lent} false with what was lent, ${total.alone} alone`,
  );
  console.log(
    `${total.faulty} arrivals whose front side draws ${options.times} times its model's: ${total.found} said within 8 strokes, ${total.rightSide} with the side`,
  );
}

main();
