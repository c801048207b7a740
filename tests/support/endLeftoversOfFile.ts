import { afterAll } from 'vitest';
import { endLeftovers } from './endWithUs.ts';

/** For every test file, after its own `afterAll`: a test that failed before it ended what it had started leaves nothing running. */
afterAll(endLeftovers);
