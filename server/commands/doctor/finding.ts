/** `attend`: works, and someone should look at it; `broken`: does not work. */
export interface Finding {
  readonly state: 'good' | 'attend' | 'broken';
  readonly what: string;
  /** What to do, where something is. */
  readonly remedy?: string;
}

const SIGN = { good: 'good   ', attend: 'attend ', broken: 'BROKEN ' } as const;

export function findingsInWords(findings: readonly Finding[]): string {
  return findings
    .map(
      ({ state, what, remedy }) =>
        `${SIGN[state]} ${what}${remedy === undefined ? '' : `\n         ${remedy}`}`,
    )
    .join('\n');
}

export function good(what: string): Finding {
  return { state: 'good', what };
}

export function attend(what: string, remedy: string): Finding {
  return { state: 'attend', what, remedy };
}

export function broken(what: string, remedy: string): Finding {
  return { state: 'broken', what, remedy };
}
