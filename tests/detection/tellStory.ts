import type { FleetRoom } from './fleets.ts';
import { playHistory } from './playFleet.ts';

/** Prints one room's truth and everything that was said of it, in the order in which it was said. */
export function tellStory({ room, fault, strokes, events }: FleetRoom): void {
  console.log(JSON.stringify(room));
  if (fault === null) console.log(`healthy for ${strokes} strokes`);
  else
    console.log(
      `${fault.name} from stroke ${fault.startsStroke} of ${strokes}: ${JSON.stringify(fault.label)}`,
    );
  const { warnings, verdict } = playHistory(room, events());
  for (const { warning, openedAt, clearedAt } of warnings) {
    const until = clearedAt === null ? 'on' : `to ${clearedAt}`;
    console.log(`from ${openedAt} ${until}: ${warning.kind} ${warning.side}: ${warning.headline}`);
    console.log(`  ${JSON.stringify(warning.evidence)}`);
  }
  console.log(`verdict at the end: ${verdict}`);
}
