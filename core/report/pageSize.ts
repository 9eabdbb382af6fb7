/** Trimmed sizes, upright, mm (ISO 216; ANSI Letter is 8.5 x 11 in). */
const PAPER_MM = { A4: { width: 210, height: 297 }, Letter: { width: 215.9, height: 279.4 } } as const;

/** Margins from the trim to the text, mm: the left one leaves room to bind, the bottom one holds the title block. */
const MARGIN_MM = { left: 18, right: 12, top: 13, bottom: 29.5 } as const;

/** Upright, or turned sideways. */
export type PageTurn = 'flow' | 'landscape';

export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
}

/** A page and where its text area ends, mm from its top left corner. */
export function pageSize(paper: 'A4' | 'Letter', page: PageTurn): PageSize {
  const upright = PAPER_MM[paper];
  const widthMm = page === 'flow' ? upright.width : upright.height;
  const heightMm = page === 'flow' ? upright.height : upright.width;
  return {
    widthMm,
    heightMm,
    leftMm: MARGIN_MM.left,
    rightMm: widthMm - MARGIN_MM.right,
    topMm: MARGIN_MM.top,
    bottomMm: heightMm - MARGIN_MM.bottom,
  };
}

/** Height a section's own heading takes at the head of a page, mm. */
export const SECTION_HEAD_MM = 11;
/** Height a drawing's caption takes under it, mm. */
export const CAPTION_MM = 11;

/** Largest drawing that fits a page of its own with its heading and caption, mm. */
export function drawingArea(paper: 'A4' | 'Letter', turn: PageTurn): { widthMm: number; heightMm: number } {
  const page = pageSize(paper, turn);
  return {
    widthMm: page.rightMm - page.leftMm,
    heightMm: page.bottomMm - page.topMm - SECTION_HEAD_MM - CAPTION_MM,
  };
}
