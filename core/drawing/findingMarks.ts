import type { Finding } from '../audit/types.ts';
import type { Project, Subject } from '../model/project.ts';
import type { Box, Point } from './geometry.ts';
import { type ProfileOptions, subjectKey } from './options.ts';
import { path, rectPath, text } from './shapes.ts';
import { textWidth } from './textWidth.ts';
import type { Shape } from './types.ts';

/** The remark of each marked thing, ready to write: `A4`, or `A4 +2` when there are more. Keys `kind:id`. */
export type Marks = ReadonlyMap<string, string>;

const FLAG_SIZE = 9;

/**
 * Which things carry which remarks: the worst first. Overruled remarks are not drawn. A remark about items, runs, feeds
 * or links marks those; only one about none of them marks its place, structure or compartment.
 */
export function marksOf(project: Project, findings: readonly Finding[], options: ProfileOptions): Marks {
  const bySubject = new Map<string, string[]>();
  if (!options.show.findingMarks) return new Map();
  const live = findings.filter((finding) => finding.overruled === null);
  for (const finding of [...live].sort(worstFirst)) {
    for (const key of new Set(markedSubjects(project, finding, options).map(subjectKey))) {
      const list = bySubject.get(key);
      if (list) list.push(finding.mark);
      else bySubject.set(key, [finding.mark]);
    }
  }
  return new Map(
    [...bySubject].map(([key, [first = '', ...more]]) => [key, more.length === 0 ? first : `${first} +${more.length}`]),
  );
}

function worstFirst(a: Finding, b: Finding): number {
  const number = (finding: Finding): number => Number(finding.mark.replace(/\D/g, ''));
  return a.severity.localeCompare(b.severity) || number(a) - number(b);
}

function markedSubjects(project: Project, finding: Finding, options: ProfileOptions): readonly Subject[] {
  const parts = finding.subjects.filter(({ kind }) => ['item', 'run', 'feed', 'link'].includes(kind));
  if (parts.length === 0) return finding.subjects;
  return parts.map((subject) => {
    // What is not drawn is marked at the item it ends at.
    if (subject.kind === 'feed' && !options.show.feeds) return endItem(project.feeds, subject);
    if (subject.kind === 'link' && !options.show.links) return endItem(project.dataLinks, subject);
    return subject;
  });
}

function endItem(
  lines: readonly { readonly id: string; readonly to: { readonly itemId: string } }[],
  subject: Subject,
): Subject {
  const line = lines.find(({ id }) => id === subject.id);
  return line ? { kind: 'item', id: line.to.itemId } : subject;
}

/** Size of the flag that carries a mark. */
export function flagSize(mark: string, u: number): { readonly width: number; readonly height: number } {
  return { width: textWidth(mark, FLAG_SIZE * u, true) + 6 * u, height: 12 * u };
}

/** A flag: the remark in paper on the ink of findings. */
export function flagShapes(mark: string, box: Box, u: number, subject: Subject): readonly Shape[] {
  const { left, top, right, bottom } = box;
  return [
    path(rectPath(left, top, right, bottom, 1.2 * u), {
      layer: 'marks',
      stroke: 'none',
      fill: 'finding',
      width: 0,
      subject,
    }),
    text(
      mark,
      { x: (left + right) / 2, y: bottom - 2.8 * u },
      {
        layer: 'marks',
        size: FLAG_SIZE * u,
        ink: 'paper',
        anchor: 'middle',
        bold: true,
        subject,
      },
    ),
  ];
}

/** Box of a flag by its left end and middle height. */
export function flagBox(mark: string, leftMiddle: Point, u: number): Box {
  const { width, height } = flagSize(mark, u);
  return {
    left: leftMiddle.x,
    right: leftMiddle.x + width,
    top: leftMiddle.y - height / 2,
    bottom: leftMiddle.y + height / 2,
  };
}
