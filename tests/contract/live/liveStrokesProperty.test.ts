import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LoggerLink, openLink } from '../../support/loggerLink.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests } from '../strokes/strokeFixture.ts';
import { type LiveStroke, liveStroke, sidesOf } from './liveFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

/** What a logger, its network and its battery may do; numbers are pieces. */
type Act =
  | { readonly do: 'say'; readonly pieces: number }
  | { readonly do: 'await acks'; readonly pieces: number }
  | { readonly do: 'repeat'; readonly back: number }
  | { readonly do: 'skip' | 'garble' | 'begin again' | 'drop' | 'take over' | 'begin otherwise' };

const act: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('say' as const), pieces: fc.integer({ min: 1, max: 6 }) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('await acks' as const), pieces: fc.integer({ min: 1, max: 4 }) }),
  },
  fc.record({ do: fc.constant('repeat' as const), back: fc.integer({ min: 1, max: 4 }) }),
  fc.record({
    do: fc.constantFrom('skip', 'garble', 'begin again', 'drop', 'take over', 'begin otherwise'),
  }),
);

/** A logger that knows what was acknowledged, and loses its link whenever it is told to. */
class Sender {
  #link!: LoggerLink;
  readonly #links: LoggerLink[] = [];
  readonly #stroke: LiveStroke;
  #said = 0;
  #acknowledged = 0;

  constructor(stroke: LiveStroke) {
    this.#stroke = stroke;
  }

  async open(): Promise<void> {
    this.#link = await openLink(service.url, fleet.loggerToken);
    this.#links.push(this.#link);
    this.#link.say(this.#stroke.begin);
    // Whatever this is answered, it is answered after the beginning.
    this.#link.say({ type: 'samples', key: this.#stroke.key, seq: 1e6, side: 'front', amps: [0] });
    for (;;) {
      const answer = await this.#link.next();
      if (answer.type === 'resume') {
        // Nothing that was acknowledged is asked for again, and nothing is there that was not said.
        expect(answer.nextSeq).toBeGreaterThanOrEqual(this.#acknowledged);
        expect(answer.nextSeq).toBeLessThanOrEqual(this.#said);
      }
      if (answer.type !== 'problem') continue;
      this.#said = answer.nextSeq ?? Number.NaN;
      // What was kept without its acknowledgement being heard is as good as acknowledged now.
      this.#acknowledged = this.#said;
      return;
    }
  }

  /** Resolves once all that was said on the link was gone through: a stroke that nobody began is refused after it. */
  async #heard(): Promise<void> {
    const key = `nobody's ${randomUUID()}`;
    this.#link.say({ type: 'samples', key, seq: 0, side: 'front', amps: [0] });
    while ((await this.#link.next()).key !== key);
  }

  async act(act: Act): Promise<void> {
    const { key, pieces, begin } = this.#stroke;
    switch (act.do) {
      case 'say':
        for (const piece of pieces.slice(this.#said, this.#said + act.pieces)) this.#link.say(piece);
        this.#said = Math.min(pieces.length, this.#said + act.pieces);
        return;
      case 'await acks':
        for (let i = 0; i < act.pieces && this.#acknowledged < this.#said; i++) {
          const { seq } = await this.#link.next('ack');
          this.#acknowledged = Math.max(this.#acknowledged, seq + 1);
        }
        return;
      case 'repeat': {
        const before = pieces.slice(0, this.#said).at(-act.back);
        if (before !== undefined) this.#link.say({ ...before, amps: [12_345] });
        return;
      }
      case 'skip':
        this.#link.say({ type: 'samples', key, seq: this.#said + 1, side: 'front', amps: [777] });
        return;
      case 'garble':
        this.#link.say(`{"type": "samples", "key": "${key}", "seq": ${this.#said}, "side": "fr`);
        return;
      case 'begin again':
        this.#link.say(begin);
        return;
      case 'begin otherwise':
        this.#link.say({ ...begin, sides: [{ side: 'rear', rateHz: 3 }] });
        return;
      case 'drop':
        await this.#link.drop();
        return this.open();
      case 'take over':
        // What is still on its way on the old link would otherwise take the stroke back.
        await this.#heard();
        return this.open();
    }
  }

  /** Sends what is left and answers the stroke's id. */
  async end(): Promise<string> {
    for (const piece of this.#stroke.pieces.slice(this.#said)) this.#link.say(piece);
    this.#link.say(this.#stroke.end);
    const { strokeId } = await this.#link.next('stored');
    await Promise.all(this.#links.map((link) => link.drop()));
    return strokeId;
  }
}

test('whatever becomes of the links, the stroke is stored once and is what was sent', async () => {
  const property = fc.asyncProperty(fc.array(act, { maxLength: 25 }), async (acts) => {
    const stroke = liveStroke(fleet, 2);
    const sender = new Sender(stroke);
    await sender.open();
    for (const each of acts) await sender.act(each);
    const strokeId = await sender.end();
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual(stroke.sides);
    const { rows } = await service.pool.query('select id from strokes where key = $1', [stroke.key]);
    expect(rows).toEqual([{ id: strokeId }]);
  });
  await fc.assert(property, { numRuns: 30 });
}, 240_000);
