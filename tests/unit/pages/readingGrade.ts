/**
 * The grade level of a text by the Flesch-Kincaid formula: 0.39 words a sentence + 11.8 syllables a word - 15.59.
 * Kincaid, J. P., Fishburne, R. P., Rogers, R. L., Chissom, B. S. (1975), Derivation of New Readability Formulas for
 * Navy Enlisted Personnel, Research Branch Report 8-75, Naval Technical Training Command, Millington. As
 * there, colons and semicolons end a unit of speech too. NaN for no words.
 */
export function readingGrade(text: string): number {
  const sentences = text.split(/[.!?:;]+(?=\s|$)/).filter((part) => /\p{L}/u.test(part)).length;
  const words = text.match(/[\p{L}\d][\p{L}\d'’-]*/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return 0.39 * (words.length / sentences) + 11.8 * (syllables / words.length) - 15.59;
}

/** English: runs of vowels, less a silent e at the end (not that of -le after a consonant) and of -es, -ed. At least one. */
export function syllablesOf(word: string): number {
  const letters = word.toLowerCase().replace(/[^a-z]/g, '');
  const spoken = letters
    .replace(/(?<![aeiouy])le$/, 'el')
    .replace(/(?<=[^aeiouy])e$/, '')
    .replace(/(?<=[^aeiouytd])ed$/, '')
    .replace(/(?<=[^aeiouyscxz])es$/, 's');
  return Math.max(1, spoken.match(/[aeiouy]+/g)?.length ?? 0);
}
