import type { Drawing } from '../drawing/types.ts';
import type { UnitPreferences } from '../units/preferences.ts';

/**
 * Sections of the sheet in printed order. Scope and cautions are always printed; the others may be left out, and those that
 * are about radios of a kind are printed only for a boat that carries some.
 */
export const SECTION_IDS = [
  'scope',
  'cautions',
  'drawing',
  'equipment',
  'cables',
  'feeds',
  'losses',
  'conditions',
  'ranges',
  'hf',
  'satellites',
  'gnss',
  'strong-signals',
  'redundancy',
  'failure-study',
  'raft',
  'rule-packs',
  'findings',
  'measurements',
  'commissioning',
  'materials',
  'signatures',
] as const;
export type SectionId = (typeof SECTION_IDS)[number];

/** How the reader wants the sheet. */
export interface SheetOptions {
  readonly paper: 'A4' | 'Letter';
  readonly preferences: UnitPreferences;
  /** ISO date (or date and time) the sheet is made; given, so that the same input makes the same sheet. */
  readonly date: string;
  /** Sections to print; all there is something to say in when left out. `scope`, `cautions` and `signatures` cannot be left out. */
  readonly sections?: readonly SectionId[];
}

/** Text of the sheet is final: units, decimal mark and language are already chosen. */
export interface Column {
  readonly header: string;
  /** Relative width; columns share the text width in this proportion. */
  readonly weight: number;
  readonly align: 'start' | 'end' | 'middle';
}

/** F full, R reduced, – lost. */
export type GradeLetter = 'F' | 'R' | '–';

export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone: 'plain' | 'quiet' | 'strong' }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, value: string])[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      /** Last row, set apart by a rule and heavier type. */
      readonly total?: readonly string[];
      /** What to print when there are no rows. */
      readonly empty: string;
    }
  | {
      /** Failure events against services. The letters carry the meaning; tint only helps the eye. */
      readonly kind: 'matrix';
      readonly caption: string;
      readonly columns: readonly { readonly code: string; readonly name: string }[];
      readonly rows: readonly { readonly label: string; readonly letters: readonly GradeLetter[] }[];
    }
  | { readonly kind: 'cautions'; readonly items: readonly { readonly title: string; readonly text: string }[] }
  | { readonly kind: 'findings'; readonly items: readonly SheetFinding[]; readonly empty: string }
  | {
      /** Commissioning blanks: expected value printed beside an empty box for the measured one. */
      readonly kind: 'blanks';
      readonly caption: string;
      readonly rows: readonly BlankRow[];
    }
  | { readonly kind: 'drawing'; readonly drawing: Drawing; readonly caption: string }
  | { readonly kind: 'signatures'; readonly roles: readonly string[] };

/** One check: what to measure or do, what the design says it should be, and the unit of the answer (or `yes / no`). */
export interface BlankRow {
  readonly label: string;
  readonly expected: string;
  readonly unit: string;
}

export interface SheetFinding {
  readonly mark: string;
  readonly severity: 'A' | 'B' | 'C';
  readonly title: string;
  /** What it is about: tags and numbers as on the drawing. */
  readonly concerns: string;
  readonly measured: string;
  readonly limit: string;
  readonly authority: string;
  readonly action: string;
  readonly overruled: string | null;
}

export interface SheetSection {
  readonly id: SectionId;
  readonly title: string;
  /** `landscape` begins a new page turned sideways, for wide schedules and long boats; `flow` is upright. */
  readonly page: 'flow' | 'landscape';
  /** Begins a page even where the one before has room: sheets that are taken out and used alone. */
  readonly ownPage: boolean;
  readonly blocks: readonly Block[];
}

/** The install sheet as data: one model for the preview, the PDF and the text of tests. */
export interface Sheet {
  readonly title: string;
  readonly subtitle: string;
  readonly paper: 'A4' | 'Letter';
  /** Printed in the title block and foot of every page. */
  readonly titleBlock: {
    readonly boat: string;
    readonly layout: string;
    readonly revision: string;
    readonly preparedBy: string;
    readonly date: string;
    readonly scale: string;
    readonly governs: string;
  };
  readonly sections: readonly SheetSection[];
}
