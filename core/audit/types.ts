import type { Subject } from '../model/project.ts';
import type { RichText } from '../units/quantity.ts';

/** A: safety, before use. B: soon. C: note. */
export type Severity = 'A' | 'B' | 'C';

/** Whose rule a finding is measured against, and how binding it is. */
export interface Authority {
  readonly name: string;
  readonly strength: 'law' | 'guide' | 'race' | 'maker' | 'practice' | 'computed';
}

/** A remark that stands alone: what, measured against which limit, whose rule, what to do. */
export interface Finding {
  /** Stable across edits that do not change the matter: `${ruleId}:${subject ids}`. */
  readonly key: string;
  readonly ruleId: string;
  readonly severity: Severity;
  /** Severity and running number as printed on the drawing, e.g. `A4`. */
  readonly mark: string;
  readonly title: string;
  readonly subjects: readonly Subject[];
  readonly measured: RichText;
  readonly limit: RichText;
  readonly authority: Authority;
  readonly action: RichText;
  /** Reason it was overruled, else null. An overruled finding is kept and printed, and no longer counts. */
  readonly overruled: { readonly reason: string; readonly by: string } | null;
}
