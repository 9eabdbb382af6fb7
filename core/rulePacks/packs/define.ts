import type { PackRule } from '../types.ts';

/** What the rules of one text have in common; each rule adds its own and may differ. */
export type Common = Pick<PackRule, 'edition' | 'source' | 'strength' | 'basis' | 'appliesTo'>;
type Own = Omit<PackRule, keyof Common> & Partial<Common>;

/** Rules of one text. */
export const rulesOf = (common: Common, rules: readonly Own[]): readonly PackRule[] =>
  rules.map((rule) => ({ ...common, ...rule }));
