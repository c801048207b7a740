import pg from 'pg';
import { ConnectionTurns } from './connectionTurns.ts';
import { ENTER_SCOPE, type RowScope, settingsOf } from './rowScope.ts';

/** For a connection that others have, milliseconds: where none of them comes free, and where they do. */
const WAIT = { standStillMs: 5000, mostMs: 30_000 };

type OnConnect = Parameters<pg.Pool['connect']>[0];

/** What the pool does not tell of itself: its idle connections, of which it takes the last. Without it any one will do. */
interface KnownOfPool {
  readonly _idle?: { readonly client: pg.PoolClient }[];
}

/**
 * A pool whose connections enter a scope when they are taken: the one asked for by `connectIn`, else `itsOwn`, which
 * is nothing unless said otherwise. So none is ever left in the scope of whoever had it before. The scope is
 * remembered beside the connection: to enter the same one again costs no round trip, and one that is in it is taken first.
 */
export class ScopedPool extends pg.Pool {
  readonly #itsOwn: RowScope;
  readonly #entered = new WeakMap<pg.PoolClient, string>();
  readonly #turns: ConnectionTurns;

  constructor(options: pg.PoolConfig & { readonly max: number }, itsOwn: RowScope = {}) {
    super(options);
    this.#itsOwn = itsOwn;
    this.#turns = new ConnectionTurns(options.max, WAIT);
    this.on('release', () => this.#turns.giveBack());
  }

  /** How many wait for a connection that others have. */
  get waitedFor(): number {
    return this.#turns.waiting;
  }

  async connectIn(scope: RowScope): Promise<pg.PoolClient> {
    const settings = settingsOf(scope);
    const wanted = settings.join(' ');
    await this.#turns.take();
    this.#offer(wanted);
    const client = await super.connect().catch((error: unknown) => {
      this.#turns.giveBackUnused();
      throw error;
    });
    if (this.#settingsIn(client) === wanted) return client;
    try {
      await client.query({ name: 'enter-scope', text: ENTER_SCOPE, values: settings });
    } catch (error) {
      // Whatever state it is in, nobody gets it.
      client.release(true);
      throw error;
    }
    this.#entered.set(client, wanted);
    return client;
  }

  /** Puts an idle connection that is in that scope already where the pool takes the next one from. */
  #offer(wanted: string): void {
    const { _idle: idle = [] } = this as unknown as KnownOfPool;
    const place = idle.findLastIndex(({ client }) => this.#settingsIn(client) === wanted);
    if (place >= 0) idle.push(...idle.splice(place, 1));
  }

  #settingsIn(client: pg.PoolClient): string {
    return this.#entered.get(client) ?? NOTHING;
  }

  override connect(): Promise<pg.PoolClient>;
  override connect(callback: OnConnect): void;
  override connect(callback?: OnConnect): Promise<pg.PoolClient> | undefined {
    const connected = this.connectIn(this.#itsOwn);
    if (callback === undefined) return connected;
    connected.then(
      (client) => callback(undefined, client, client.release.bind(client)),
      (error: Error) => callback(error, undefined, () => undefined),
    );
    return undefined;
  }
}

/** How a new connection begins. */
const NOTHING = settingsOf({}).join(' ');
