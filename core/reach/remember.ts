interface Known<Result> {
  readonly inputs: readonly unknown[];
  readonly result: Result;
}

/**
 * Remembers results by the object they come from, an id and everything else they depend on, by identity or value, so that the same
 * inputs give the same object.
 */
export function rememberer<Result>(): (
  key: object,
  id: string,
  inputs: readonly unknown[],
  make: () => Result,
) => Result {
  const cache = new WeakMap<object, Map<string, Known<Result>>>();
  return (key, id, inputs, make) => {
    const ofKey = cache.get(key) ?? new Map<string, Known<Result>>();
    cache.set(key, ofKey);
    const old = ofKey.get(id);
    if (old?.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i])) return old.result;
    const result = make();
    ofKey.set(id, { inputs, result });
    return result;
  };
}
