import { parentPort } from 'node:worker_threads';
import { measureStroke } from '../../../analysis/measureStroke.ts';
import { toStrokeTrace } from '../../../ingest/stroke.ts';
import type { FromMeasureThread, StrokeToMeasure, ToMeasureThread } from './measureMessages.ts';

/** Runs in a thread of its own and measures strokes for `MeasureThread`. It reaches nothing else. */
if (parentPort === null) throw new Error('This is to be run in a thread.');
const port = parentPort;

port.on('message', ({ number, strokes }: ToMeasureThread) => {
  answer({ number, analyses: strokes.map(measure) });
});
answer('ready');

function answer(message: FromMeasureThread): void {
  port.postMessage(message);
}

/** Null where it fails: that is found out again, and told, by whoever measures it once it is stored. */
function measure({ recorded, direction, room }: StrokeToMeasure): string | null {
  try {
    return JSON.stringify(measureStroke(toStrokeTrace(recorded, direction), room));
  } catch {
    return null;
  }
}
