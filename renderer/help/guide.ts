import type { PanelId } from '../store/store.ts';
import { type Block, blockText, parseMarkdown } from './markdown.ts';

/** One page of the help: what stands under a second-level heading of the user guide. */
export interface GuidePage {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
  /** All its words, for searching. */
  readonly text: string;
}

/** Parts a guide into pages at its second-level headings; what comes before the first is left out. */
export function guidePages(markdown: string): GuidePage[] {
  const pages: { title: string; blocks: Block[] }[] = [];
  for (const block of parseMarkdown(markdown)) {
    if (block.kind === 'heading' && block.level === 2) pages.push({ title: block.text, blocks: [] });
    else pages.at(-1)?.blocks.push(block);
  }
  return pages.map(({ title, blocks }) => ({
    id: pageId(title),
    title,
    blocks,
    text: [title, ...blocks.map(blockText)].join('\n'),
  }));
}

/** `4. Read what it loses` becomes `read-what-it-loses`. */
export function pageId(title: string): string {
  return title
    .toLowerCase()
    .replace(/^\d+\.\s*/, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
}

/** The page of the guide that is about a panel; a test holds these to the guide's headings. */
export const PANEL_PAGES: Readonly<Record<PanelId, string>> = {
  particulars: 'put-things-aboard',
  'path-loss': 'read-what-it-loses',
  range: 'read-how-far-it-reaches',
  redundancy: 'see-what-failures-take-away',
  findings: 'settle-the-findings',
  sheet: 'hand-it-over',
};

/** Lower case without accents, so that a search needs neither. */
const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

export interface Found<T> {
  readonly page: T;
  /** The words around the first match, or null when nothing was searched for. */
  readonly near: string | null;
}

/** Pages that hold every word of the query, in the guide's order; all of them for an empty query. */
export function searchPages<T extends { readonly text: string }>(pages: readonly T[], query: string): Found<T>[] {
  const words = folded(query).split(/\s+/).filter(Boolean);
  const [first] = words;
  if (first === undefined) return pages.map((page) => ({ page, near: null }));
  return pages
    .filter(({ text }) => words.every((word) => folded(text).includes(word)))
    .map((page) => ({ page, near: near(page.text, first) }));
}

const NEAR_CHARACTERS = 48;

function near(text: string, word: string): string {
  // The title is shown above, so words found only there give the beginning.
  const body = text.slice(text.indexOf('\n') + 1).replaceAll('\n', ' ');
  const at = Math.max(0, folded(body).indexOf(word));
  const from = at < NEAR_CHARACTERS / 2 ? 0 : body.indexOf(' ', at - NEAR_CHARACTERS / 2) + 1;
  const to = Math.min(body.length, at + word.length + NEAR_CHARACTERS);
  return `${from > 0 ? '…' : ''}${body.slice(from, to).trim()}${to < body.length ? '…' : ''}`;
}

/** Cuts a text where words of the query stand in it, for marking them. */
export function markedParts(text: string, query: string): { readonly text: string; readonly isHit: boolean }[] {
  const words = folded(query).split(/\s+/).filter(Boolean);
  const plain = folded(text);
  // Folding that changes the length would mark the wrong letters.
  if (words.length === 0 || plain.length !== text.length) return [{ text, isHit: false }];
  const pattern = new RegExp(words.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|'), 'g');
  const parts: { text: string; isHit: boolean }[] = [];
  let from = 0;
  for (const found of plain.matchAll(pattern)) {
    if (found.index > from) parts.push({ text: text.slice(from, found.index), isHit: false });
    parts.push({ text: text.slice(found.index, found.index + found[0].length), isHit: true });
    from = found.index + found[0].length;
  }
  if (from < text.length) parts.push({ text: text.slice(from), isHit: false });
  return parts;
}
