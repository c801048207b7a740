import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { ScopedPool } from '../database/scopedPool.ts';
import type { WorkWaiting } from './workWaiting.ts';

/** What the process counts about itself, in the text form of Prometheus. One for each application. */
export interface Metrics {
  readonly registry: Registry;
  /** Seconds from the request's head to the end of its answer. */
  readonly answered: Histogram<'method' | 'route' | 'status'>;
  /** Answers with a problem, by its name in `server/problems.ts`. */
  readonly problems: Counter<'problem'>;
  /** Strokes by what became of them: stored, duplicate, rejected. */
  readonly strokes: Counter<'outcome'>;
  /** Seconds that bringing the rooms of one round up to date took. */
  readonly analysed: Histogram;
  /** Rooms that were brought up to date. */
  readonly rooms: Counter;
  /** Attempts to tell people by mail and programs by webhook, by what came of them. */
  readonly notices: Counter<'channel' | 'outcome'>;
  /** Strokes that the analysis failed on. */
  readonly setAside: Counter;
}

const ANSWER_SECONDS = [0.005, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10];
const ANALYSIS_SECONDS = [0.01, 0.05, 0.1, 0.5, 1, 5, 30, 120];

/** `waiting` is asked with each reading, and does not ask the database each time. */
export function createMetrics(pool: ScopedPool, waiting: () => Promise<WorkWaiting>): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  watchPool(registry, pool);
  watchWork(registry, waiting);
  return {
    registry,
    answered: new Histogram({
      name: 'slideload_http_answer_seconds',
      help: "From a request's head to the end of its answer.",
      labelNames: ['method', 'route', 'status'],
      buckets: ANSWER_SECONDS,
      registers,
    }),
    problems: new Counter({
      name: 'slideload_problems_total',
      help: 'Answers that say what was wrong, by problem.',
      labelNames: ['problem'],
      registers,
    }),
    strokes: new Counter({
      name: 'slideload_strokes_total',
      help: 'Strokes received, by what became of them.',
      labelNames: ['outcome'],
      registers,
    }),
    analysed: new Histogram({
      name: 'slideload_analysis_seconds',
      help: 'Bringing the rooms of one round up to date.',
      buckets: ANALYSIS_SECONDS,
      registers,
    }),
    rooms: new Counter({
      name: 'slideload_rooms_analysed_total',
      help: 'Rooms that were brought up to date.',
      registers,
    }),
    notices: new Counter({
      name: 'slideload_notices_total',
      help: 'Attempts to tell people and programs, by what came of them.',
      labelNames: ['channel', 'outcome'],
      registers,
    }),
    setAside: new Counter({
      name: 'slideload_strokes_set_aside_total',
      help: 'Strokes that the analysis failed on; doctor names them.',
      registers,
    }),
  };
}

function watchPool(registry: Registry, pool: ScopedPool): void {
  new Gauge({
    name: 'slideload_database_connections',
    help: 'Connections of this process to the database, and requests that wait for one.',
    labelNames: ['state'],
    registers: [registry],
    collect() {
      this.set({ state: 'used' }, pool.totalCount - pool.idleCount);
      this.set({ state: 'idle' }, pool.idleCount);
      this.set({ state: 'waited-for' }, pool.waitedFor);
    },
  });
}

function watchWork(registry: Registry, waiting: () => Promise<WorkWaiting>): void {
  const age = new Gauge({
    name: 'slideload_oldest_unanalysed_seconds',
    help: 'How long the longest waiting stroke has waited for its analysis.',
    registers: [registry],
  });
  new Gauge({
    name: 'slideload_rooms_waiting',
    help: 'Rooms whose results are out of date.',
    registers: [registry],
    async collect() {
      const { rooms, oldestS } = await waiting();
      this.set(rooms);
      age.set(oldestS);
    },
  });
}
