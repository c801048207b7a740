import { setTimeout as wait } from 'node:timers/promises';
import type { FastifyBaseLogger } from 'fastify';
import { connect, type IPublishPacket, type MqttClient } from 'mqtt';
import { loggerOfTopic, resultsTopic, SHARED_STROKES_TOPIC, STROKES_TOPIC } from './strokesTopic.ts';
import { type MessageParts, NotYet, takeMessage } from './takeMessage.ts';

const FIRST_TRY_AGAIN_MS = 500;
const LAST_TRY_AGAIN_MS = 30_000;

export interface BrokerSettings {
  readonly url: string;
  /** The broker keeps for this name what came while the service was away. */
  readonly clientId: string;
  readonly trustTopic: boolean;
  /** Several processes share the messages among them. */
  readonly shared: boolean;
}

type Parts = Omit<MessageParts, 'trustTopic'> & { readonly log: FastifyBaseLogger };

/**
 * Takes strokes from a broker: one message after the other, each acknowledged once it is committed. While the
 * database is away a message waits, and with it the broker; what the broker sends once more is a duplicate. The
 * service needs no broker to start and to serve: it tries again, at ever longer intervals, by itself.
 */
export function linkToBroker(settings: BrokerSettings, parts: Parts): { stop(): Promise<void> } {
  const { log } = parts;
  const stopping = new AbortController();
  let underWay: Promise<void> = Promise.resolve();
  const client = connect(settings.url, {
    clientId: settings.clientId,
    clean: false,
    reconnectPeriod: FIRST_TRY_AGAIN_MS,
    // It subscribes at each connection by itself, so that a broker that forgot it learns of it again.
    resubscribe: false,
  });
  // The library acknowledges when `done` is called, and reads no further message before.
  client.handleMessage = (packet, done) => {
    underWay = take(client, settings, parts, packet, stopping.signal).then(
      () => done(),
      // Not acknowledged: the broker sends it again.
      () => undefined,
    );
  };
  client.on('connect', () => {
    client.options.reconnectPeriod = FIRST_TRY_AGAIN_MS;
    const topic = settings.shared ? SHARED_STROKES_TOPIC : STROKES_TOPIC;
    client.subscribe(topic, { qos: 1 }, (error) => {
      if (error) log.error({ err: error, topic }, 'The broker does not let the service subscribe.');
    });
  });
  client.on('close', () => {
    const next = 2 * (client.options.reconnectPeriod ?? FIRST_TRY_AGAIN_MS);
    client.options.reconnectPeriod = Math.min(LAST_TRY_AGAIN_MS, next) * (0.75 + Math.random() / 2);
  });
  client.on('error', (error) => log.warn({ err: error }, 'The broker cannot be reached.'));
  return {
    stop: async () => {
      stopping.abort();
      await underWay;
      await client.endAsync(true);
    },
  };
}

/** Resolves once the message may be acknowledged; rejects when the service stops before. */
async function take(
  client: MqttClient,
  { trustTopic }: BrokerSettings,
  { log, ...parts }: Parts,
  packet: IPublishPacket,
  stopping: AbortSignal,
): Promise<void> {
  const loggerId = loggerOfTopic(packet.topic);
  if (loggerId === null) return;
  const payload = Buffer.from(packet.payload);
  const onFailure = (error: unknown) => log.error({ err: error, loggerId }, 'A message could not be taken.');
  for (let waitMs = FIRST_TRY_AGAIN_MS; ; waitMs = Math.min(LAST_TRY_AGAIN_MS, 2 * waitMs)) {
    try {
      const result = await takeMessage({ ...parts, trustTopic }, loggerId, payload, onFailure);
      // Not waited for: the broker's own acknowledgement is read only after this message was.
      client.publish(resultsTopic(loggerId), result, { qos: 1 }, (error) => {
        if (error) log.warn({ err: error, loggerId }, 'A result could not be published.');
      });
      return;
    } catch (error) {
      if (!(error instanceof NotYet)) throw error;
      log.warn({ err: error, loggerId }, 'A message waits for the database.');
      await wait(waitMs, undefined, { signal: stopping });
    }
  }
}
