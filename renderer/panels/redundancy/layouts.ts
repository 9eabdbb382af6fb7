import { assess, assessAlternative } from '../../../core/assess.ts';
import type { Severity } from '../../../core/audit/types.ts';
import type { Project } from '../../../core/model/project.ts';
import type { MatrixRow } from '../../../core/redundancy/types.ts';

/** Services lost and reduced. */
export interface Counts {
  readonly lost: number;
  readonly reduced: number;
}

/** One layout of the boat in numbers, to lay beside another. */
export interface LayoutNumbers {
  readonly id: string;
  readonly name: string;
  /** By event id; an event that cannot happen to this layout (its splitter is gone) is not in it. */
  readonly byEvent: ReadonlyMap<string, Counts>;
  /** Over all failures, the intact boat left out. */
  readonly total: Counts;
  readonly singlePoints: number;
  /** Remarks that stand. */
  readonly remarks: Readonly<Record<Severity, number>>;
}

export interface Comparison {
  /** The current layout first, then the others in the order they are kept. */
  readonly layouts: readonly LayoutNumbers[];
  /** Events of any of the layouts, those of the current one first. */
  readonly events: readonly { readonly id: string; readonly label: string }[];
}

/** The current layout beside the boat's other ones. */
export function compareLayouts(project: Project): Comparison {
  const all = [
    { id: '', name: project.layoutName, result: assess(project) },
    ...project.alternatives.map((layout) => ({
      id: layout.id,
      name: layout.name,
      result: assessAlternative(project, layout),
    })),
  ];
  const labels = new Map<string, string>();
  for (const { result } of all) {
    for (const { event } of result.redundancy.matrix) {
      if (!labels.has(event.id)) labels.set(event.id, event.label);
    }
  }
  return {
    events: [...labels].map(([id, label]) => ({ id, label })),
    layouts: all.map(({ id, name, result: { redundancy, findings } }) => {
      const standing = findings.filter(({ overruled }) => overruled === null);
      const remarks = (severity: Severity): number => standing.filter((each) => each.severity === severity).length;
      return {
        id,
        name,
        byEvent: new Map(redundancy.matrix.map((row) => [row.event.id, countsOf([row])])),
        total: countsOf(redundancy.matrix.filter(({ event }) => event.kind !== 'none')),
        singlePoints: redundancy.singlePoints.length,
        remarks: { A: remarks('A'), B: remarks('B'), C: remarks('C') },
      };
    }),
  };
}

function countsOf(rows: readonly Pick<MatrixRow, 'states'>[]): Counts {
  const grades = rows.flatMap(({ states }) => states.map(({ grade }) => grade));
  return {
    lost: grades.filter((grade) => grade === 'lost').length,
    reduced: grades.filter((grade) => grade === 'reduced').length,
  };
}
