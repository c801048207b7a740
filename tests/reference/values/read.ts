import { readFileSync } from 'node:fs';

/** One published case: what goes in and what the publication, or the named program, says comes out. */
export interface PublishedCase<Inputs, Expected> {
  readonly id: string;
  readonly source?: string;
  readonly inputs: Inputs;
  readonly expected: Expected;
}

/**
 * The published cases of `tests/reference/values/<name>.json`, those whose id satisfies `wanted`.
 * Throws where none does, so a table cannot pass by being empty.
 */
export function published<Inputs, Expected>(
  name: string,
  wanted: (id: string) => boolean = () => true,
): PublishedCase<Inputs, Expected>[] {
  // The files are ours and each test names the shape of the cases that it takes from them.
  const file = JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as {
    cases: PublishedCase<Inputs, Expected>[];
  };
  const cases = file.cases.filter((one) => wanted(one.id));
  if (cases.length === 0) throw new RangeError(`no published case in ${name} is wanted`);
  return cases;
}

/** The only published case of that id. */
export function publishedCase<Inputs, Expected>(name: string, id: string): PublishedCase<Inputs, Expected> {
  return published<Inputs, Expected>(name, (one) => one === id)[0];
}
