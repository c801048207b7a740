/** Those of 12 characters and more, in lower case with a blank between: the build puts them here. */
declare const COMMON_PASSWORDS: string;

const common: ReadonlySet<string> = new Set(COMMON_PASSWORDS.split(' '));

/** Whether many people use this password, however they write its letters. */
export function isCommonPassword(password: string): boolean {
  return common.has(password.toLowerCase());
}
