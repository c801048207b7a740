/** Some four lines on a phone. */
const MOST_CHARACTERS = 240;
const MOST_LINES = 4;
/** A text that is hardly longer is no shorter to read when it is folded. */
const SPARE = 60;

/** The first lines of a long text, cut between words; a short text is its own beginning. */
export function beginningOf(text: string): string {
  const lines = text.split('\n');
  if (text.length <= MOST_CHARACTERS + SPARE && lines.length <= MOST_LINES + 1) return text;
  const few = lines.slice(0, MOST_LINES).join('\n');
  if (few.length <= MOST_CHARACTERS) return `${few.trimEnd()} …`;
  const cut = few.slice(0, MOST_CHARACTERS);
  const lastSpace = cut.search(/\s\S*$/);
  // Half of a character that takes two is none.
  const end = lastSpace > MOST_CHARACTERS / 2 ? lastSpace : cut.replace(/[\uD800-\uDBFF]$/, '').length;
  return `${cut.slice(0, end).trimEnd()} …`;
}
