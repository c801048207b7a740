import { z } from 'zod';

/** A variable that is `1` or left out. */
export const Flag = z
  .enum(['0', '1'], { error: 'must be 1, or be left out' })
  .transform((flag) => flag === '1')
  .default(false);

/** A variable that holds an address of one of these schemes; the example tells whoever got it wrong. */
export function addressOf(schemes: readonly string[], example: string) {
  const isOne = (text: string) =>
    URL.canParse(text) && schemes.some((scheme) => text.startsWith(`${scheme}://`));
  return z.string().refine(isOne, { error: `must be an address such as ${example}` });
}
