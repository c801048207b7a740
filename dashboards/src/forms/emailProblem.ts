import { words } from '../words.ts';

/** What is wrong with an e-mail address before it is sent; the service looks closer. */
export function emailProblem(typed: string, missing: string): string | null {
  const email = typed.trim();
  if (email === '') return missing;
  const domain = /^[^\s@]+@([^\s@]+)$/.exec(email)?.[1] ?? '';
  return /[^.]\.[^.]/.test(domain) ? null : words.forms.emailWrong;
}
