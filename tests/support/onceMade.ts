/**
 * What a hook makes before the tests run, to be named where they are described: whatever is asked of it is asked of what
 * was made. Of no use before that, nor for values that are no objects.
 */
export function onceMade<Made extends object>(made: () => Made | undefined): Made {
  const ready = (): Made => {
    const value = made();
    if (value === undefined) throw new Error('It is asked before the hook that makes it has run.');
    return value;
  };
  return new Proxy({} as Made, {
    get: (_, name) => Reflect.get(ready(), name),
    has: (_, name) => Reflect.has(ready(), name),
    ownKeys: () => Reflect.ownKeys(ready()),
    getOwnPropertyDescriptor: (_, name) => Reflect.getOwnPropertyDescriptor(ready(), name),
  });
}
