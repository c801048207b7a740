/** The labels of SenML's fields in CBOR (RFC 8428, section 6, table 4). */
const NAMES = new Map([
  [-1, 'bver'],
  [-2, 'bn'],
  [-3, 'bt'],
  [-4, 'bu'],
  [-5, 'bv'],
  [-6, 'bs'],
  [0, 'n'],
  [1, 'u'],
  [2, 'v'],
  [3, 'vs'],
  [4, 'vb'],
  [5, 's'],
  [6, 't'],
  [7, 'ut'],
  [8, 'vd'],
]);

/** A label that has no meaning yet stays a number: a field to pass over, as an unknown name is. */
export function senmlFieldOf(label: number): string {
  return NAMES.get(label) ?? String(label);
}
