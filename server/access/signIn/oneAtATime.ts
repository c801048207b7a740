/** Runs tasks of one name after another, those of other names meanwhile. */
export function oneAtATime(): <Result>(name: string, task: () => Promise<Result>) => Promise<Result> {
  const tails = new Map<string, Promise<unknown>>();
  return (name, task) => {
    const before = tails.get(name) ?? Promise.resolve();
    const run = before.then(task);
    // The next in line only waits for this one: whether it failed is its own caller's concern.
    const tail = run.then(
      () => undefined,
      () => undefined,
    );
    tails.set(name, tail);
    void tail.then(() => {
      if (tails.get(name) === tail) tails.delete(name);
    });
    return run;
  };
}
