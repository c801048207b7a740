import { expect, test } from 'vitest';
import { readConfiguration } from '../../../server/configuration.ts';
import { DEFAULT_LIMITS } from '../../../server/limits/limits.ts';

const ADMIN = { ADMIN_EMAIL: 'Mara@Example.com', ADMIN_PASSWORD: 'a long enough secret' };

test('everything has a default', () => {
  expect(readConfiguration({})).toEqual({
    port: 8080,
    host: '127.0.0.1',
    databaseUrl: null,
    dataDir: './data',
    admin: null,
    demo: false,
    role: 'both',
    metricsToken: null,
    mail: null,
    publicUrl: null,
    webhooksToPrivate: false,
    broker: null,
    trustProxy: 'loopback',
    logLevel: 'warn',
    limits: DEFAULT_LIMITS,
  });
});

test('a variable set to nothing counts as left out', () => {
  expect(readConfiguration({ PORT: '', DATABASE_URL: '', DEMO: '' })).toEqual(readConfiguration({}));
});

test('what is set is taken', () => {
  const set = {
    PORT: '0',
    HOST: '::1',
    DATABASE_URL: 'postgres://a:b@c/d',
    DATA_DIR: '/x',
    DEMO: '1',
    MQTT_URL: 'mqtts://broker.example.com',
    MQTT_CLIENT_ID: 'one',
    MQTT_SHARE: '1',
    LIMIT_BODY_MEMORY_MIB: '100',
    LIMIT_HEADERS_SECONDS: '5',
    ...ADMIN,
  };
  expect(readConfiguration(set)).toMatchObject({
    port: 0,
    host: '::1',
    databaseUrl: 'postgres://a:b@c/d',
    dataDir: '/x',
    demo: true,
    broker: { url: 'mqtts://broker.example.com', clientId: 'one', shared: true, trustTopic: false },
    admin: { email: 'mara@example.com', password: ADMIN.ADMIN_PASSWORD },
    limits: { ...DEFAULT_LIMITS, bodyBytes: 100 * 1024 * 1024, headersWithinMs: 5000 },
  });
});

test.each([
  ['PORT', { PORT: '80a' }],
  ['PORT', { PORT: '-1' }],
  ['PORT', { PORT: '65536' }],
  ['DATABASE_URL', { DATABASE_URL: 'mysql://somewhere/else' }],
  ['DATABASE_URL', { DATABASE_URL: 'somewhere' }],
  ['ADMIN_PASSWORD', { ...ADMIN, ADMIN_PASSWORD: 'too short' }],
  ['ADMIN_PASSWORD', { ADMIN_EMAIL: ADMIN.ADMIN_EMAIL }],
  ['ADMIN_EMAIL', { ...ADMIN, ADMIN_EMAIL: 'mara' }],
  ['LIMIT_CONNECTIONS', { LIMIT_CONNECTIONS: '9' }],
  ['LIMIT_BODY_SECONDS', { LIMIT_BODY_SECONDS: 'long' }],
  ['DEMO', { DEMO: 'maybe' }],
  ['LOG_LEVEL', { LOG_LEVEL: 'loud' }],
])('a bad %s is named in one line that does not repeat it', (name, environment) => {
  const read = () => readConfiguration(environment);
  expect(read).toThrow(new RegExp(`^The environment variable ${name} is wrong: [^\n]+\\.$`));
  expect(read).not.toThrow(/too short|maybe|loud|mysql/);
});
