import { budgetPaths } from '../../core/links/budget.ts';
import type { PathBudget } from '../../core/links/types.ts';
import type { Project } from '../../core/model/project.ts';
import { levelCurve } from '../../core/reach/levelCurve.ts';
import { solveRanges } from '../../core/reach/ranges.ts';
import { demo } from './demo.ts';
import { keep, median, milliseconds } from './timing.ts';

/** One frame at 60 a second. */
const FRAME_MS = 16;
const ROUNDS = 31;

interface Solve {
  readonly name: string;
  /** Gets a project nobody has seen yet, so that no cache by identity can help, and says how to do the work. */
  readonly prepare: (project: Project) => () => number;
  readonly aimMs: number;
}

/** One set with an antenna of its own choosing, and no hand-held beside it. */
function oneRadio(project: Project): { boat: Project; paths: readonly PathBudget[] } {
  const paths = budgetPaths(project)
    .filter((path) => path.service === 'vhf-voice')
    .slice(0, 1);
  const first = project.stations[0];
  if (paths.length === 0 || !first) throw new Error('The demo boat has no VHF path or no other station.');
  const stations = Array.from({ length: 8 }, (_, i) => ({
    ...(project.stations[i % project.stations.length] ?? first),
    id: `station-${i}`,
    antennaHeightM: 2 + 4 * i,
  }));
  const items = project.items.filter((item) => !item.partId.startsWith('handheld'));
  return { boat: { ...project, items, stations }, paths };
}

const SOLVES: readonly Solve[] = [
  {
    name: 'ranges of one radio to eight stations, both ways, with bands',
    prepare: (project) => {
      const { boat, paths } = oneRadio(project);
      return () => solveRanges(boat, paths).length;
    },
    aimMs: FRAME_MS,
  },
  {
    name: 'level curve of 400 points',
    prepare: (project) => {
      const { boat, paths } = oneRadio(project);
      const range = solveRanges(boat, paths)[0];
      if (!range) throw new Error('The demo boat has no range.');
      return () => levelCurve(boat, paths, range, { points: 400 }).points.length;
    },
    aimMs: FRAME_MS,
  },
];

/** What the panels wait for, each against the frame it should fit in. */
export function solveRows(): readonly Record<string, string | number>[] {
  const boat = demo('pelluna');
  return SOLVES.map(({ name, prepare, aimMs }) => {
    const times = Array.from({ length: ROUNDS }, () => {
      const work = prepare(structuredClone(boat));
      return milliseconds(() => keep(work()));
    });
    const typicalMs = median(times);
    return {
      solve: name,
      'median, ms': typicalMs.toFixed(2),
      'worst, ms': Math.max(...times).toFixed(2),
      'aim, ms': `${aimMs}: ${typicalMs <= aimMs ? 'kept' : 'missed'}`,
    };
  });
}
