/** An exported sum of the engine with inputs that it answers: every input a number, by the name it has in the sum. */
export interface Sum {
  readonly name: string;
  readonly good: Readonly<Record<string, number>>;
  readonly run: (values: Readonly<Record<string, number>>) => unknown;
}

export function sum<Name extends string>(
  name: string,
  good: Readonly<Record<Name, number>>,
  run: (values: Readonly<Record<Name, number>>) => unknown,
): Sum {
  return { name, good, run: (values) => run(values as Readonly<Record<Name, number>>) };
}
