import { z } from 'zod';

/** The answer to a DELETE. */
export const NO_CONTENT = z.undefined().describe('Done; nothing to say.');
