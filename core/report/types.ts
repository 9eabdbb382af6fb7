import type { Drawing } from '../drawing/types.ts';

/** Text of the sheet is final: units, decimal mark and language are already chosen. */
export interface Column {
  readonly header: string;
  /** Relative width; columns share the text width in this proportion. */
  readonly weight: number;
  readonly align: 'start' | 'end' | 'middle';
}

export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone: 'plain' | 'quiet' | 'strong' }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, value: string])[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      /** What to print when there are no rows. */
      readonly empty: string;
    }
  | { readonly kind: 'cautions'; readonly items: readonly { readonly title: string; readonly text: string }[] }
  | { readonly kind: 'findings'; readonly items: readonly SheetFinding[]; readonly empty: string }
  | {
      /** Commissioning blanks: expected value printed beside an empty box for the measured one. */
      readonly kind: 'blanks';
      readonly rows: readonly { readonly label: string; readonly expected: string; readonly unit: string }[];
    }
  | { readonly kind: 'drawing'; readonly drawing: Drawing; readonly caption: string }
  | { readonly kind: 'signatures'; readonly roles: readonly string[] };

export interface SheetFinding {
  readonly mark: string;
  readonly title: string;
  readonly measured: string;
  readonly limit: string;
  readonly authority: string;
  readonly action: string;
  readonly overruled: string | null;
}

export interface SheetSection {
  readonly id: string;
  readonly title: string;
  /** Whether the section wants a page of its own, turned sideways for the drawing. */
  readonly page: 'flow' | 'landscape';
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
