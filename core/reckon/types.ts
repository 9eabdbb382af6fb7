/** One thing a sum asks for. */
export interface Parameter {
  readonly key: string;
  readonly label: string;
  /** As printed; empty for a name or a bare ratio. */
  readonly unit: string;
  readonly kind: 'number' | 'text';
  /** Allowed span of a number, both ends included. */
  readonly min?: number;
  readonly max?: number;
  /** Allowed words of a text where the list is short. */
  readonly choices?: readonly string[];
  /** Taken when the key is left out; a parameter without one must be given, unless another of its group is. */
  readonly fallback?: number | string;
  readonly example: string;
}

/** A named answer. */
export interface Answer {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  /** Decimals worth printing. */
  readonly digits: number;
}

/** Checked parameters as a sum reads them. */
export interface Given {
  number(key: string): number;
  text(key: string): string;
  has(key: string): boolean;
}

/** A sum of the bench: pure, with everything that must be said about it. */
export interface Sum {
  readonly id: string;
  readonly title: string;
  readonly parameters: readonly Parameter[];
  /** Keys of which exactly one is given. */
  readonly oneOf?: readonly string[];
  readonly source: string;
  /** @throws RangeError with a whole sentence for what the spans cannot tell */
  readonly reckon: (given: Given) => readonly Answer[];
}

/** What came of a request: answers, or the sentence that says what is wrong. */
export type Reckoned =
  | { readonly ok: true; readonly sum: Sum; readonly answers: readonly Answer[] }
  | { readonly ok: false; readonly message: string };
