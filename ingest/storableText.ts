/** Whether Postgres can hold the text and give it back unchanged: U+0000 is an error there, half a surrogate pair no text. */
export function isStorable(text: string): boolean {
  return !/[\0\p{Surrogate}]/u.test(text);
}
