import { expect, test } from 'vitest';
import { oneAtATime } from '../../../server/access/signIn/oneAtATime.ts';

test('tasks of one name run one after another, also behind one that failed; those of other names meanwhile', async () => {
  const run = oneAtATime();
  const begun: string[] = [];
  let open = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  const task =
    (name: string, waits: Promise<void> = Promise.resolve()) =>
    async () => {
      begun.push(name);
      await waits;
      return name;
    };
  const first = run('mara', task('first', opened));
  const failing = run('mara', () => {
    begun.push('failing');
    return Promise.reject(new Error('refused'));
  });
  const last = run('mara', task('last'));
  expect(await run('ines', task('other'))).toBe('other');
  expect(begun).toEqual(['first', 'other']);
  open();
  expect(await first).toBe('first');
  await expect(failing).rejects.toThrow('refused');
  expect(await last).toBe('last');
  expect(begun).toEqual(['first', 'other', 'failing', 'last']);
});
