import { codeOf } from '../ingest/errorCode.ts';

/** What was asked of a file; null where there is no such file. */
export async function ifThere<Answer>(asked: Promise<Answer>): Promise<Answer | null> {
  try {
    return await asked;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}
