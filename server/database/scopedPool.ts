import pg from 'pg';
import { ENTER_SCOPE, type RowScope, settingsOf } from './rowScope.ts';

type OnConnect = Parameters<pg.Pool['connect']>[0];

/**
 * A pool whose connections enter a scope when they are taken: the one asked for by `connectIn`, else `itsOwn`, which
 * is nothing unless said otherwise. So none is ever left in the scope of whoever had it before. The scope is
 * remembered beside the connection: to enter the same one again costs no round trip.
 */
export class ScopedPool extends pg.Pool {
  readonly #itsOwn: RowScope;
  readonly #entered = new WeakMap<pg.PoolClient, string>();

  constructor(options: pg.PoolConfig, itsOwn: RowScope = {}) {
    super(options);
    this.#itsOwn = itsOwn;
  }

  async connectIn(scope: RowScope): Promise<pg.PoolClient> {
    const client = await super.connect();
    const settings = settingsOf(scope);
    const wanted = settings.join(' ');
    if ((this.#entered.get(client) ?? NOTHING) === wanted) return client;
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
