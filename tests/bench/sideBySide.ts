import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { solverOf } from '../../core/faultTree/solver.ts';
import type { WrittenTree } from '../support/faultTrees.ts';
import { type AnalyserAnswer, analysed, analyserVersion } from './analyser.ts';
import { type ComparedTree, comparedTrees } from './comparedTrees.ts';
import { openPsaOf } from './openPsa.ts';
import { type ProcessTimes, timedProcess } from './processes.ts';
import { keep, milliseconds } from './timing.ts';

const RUNS = 7;
const WARM_RUNS = 25;
const LIMIT_MS = 20_000;
/** How much longer the algorithm may take than the compiled one. */
const AIM_TIMES = 3;
/** More sets than this are counted and not written out by either: no disk has room for the large votes. */
const MOST_LISTED = 2_000_000;

interface OurAnswer {
  readonly process: ProcessTimes;
  readonly algorithmMs: number;
  readonly countByOrder: readonly number[];
  readonly probability: number;
  /** False where only bounds fit, the lower of which is the probability here. */
  readonly isExact: boolean;
}

/** Our engine and a general-purpose analyser on the same trees in one run: time and memory, algorithm and whole process. */
export function printSideBySide(): void {
  const version = analyserVersion();
  const { trees, missing } = comparedTrees();
  console.log(
    `Fault trees side by side: ours, and ${version ?? 'no analyser: scram is not installed, its side is skipped'}`,
  );
  for (const name of missing) console.log(`skipped: ${name} (FAULT_TREE_BENCHMARKS names no folder that has it)`);
  console.log(
    `Algorithm: cut sets up to the order and exact probability, best; ours in a warm process of ${WARM_RUNS} runs, its by its own report. ` +
      `Whole process: file to answer with every set written to a file, best and median of ${RUNS}; limit ${LIMIT_MS / 1000} s.`,
  );
  const folder = mkdtempSync(join(tmpdir(), 'fault-trees-'));
  try {
    const results = trees.map((tree) => {
      const ours = byOurs(tree, folder);
      const its = version === null ? null : byAnalyser(tree, folder);
      return { tree, ours, its };
    });
    console.table(results.map(row));
    if (version !== null) for (const result of results) compare(result);
    if (version !== null) printAims(results);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

interface Result {
  readonly tree: ComparedTree;
  readonly ours: OurAnswer;
  readonly its: AnalyserAnswer | null;
}

function byOurs({ tree, probabilityOf, maxOrder }: ComparedTree, folder: string): OurAnswer {
  const solve = () => {
    const solver = solverOf(tree);
    const sets = solver.cutSets(tree.top, maxOrder);
    const { lowest, isExact } = solver.unavailability(tree.top)(probabilityOf);
    return { sets, lowest, isExact };
  };
  const times = Array.from({ length: WARM_RUNS }, () => milliseconds(() => keep(solve().lowest)));
  const { sets, lowest, isExact } = solve();
  const file = join(folder, 'tree.json');
  writeFileSync(file, JSON.stringify(writtenTree(tree, probabilityOf)));
  const program = resolve(import.meta.dirname, 'solveTree.js');
  const lists = sets.count <= MOST_LISTED ? [join(folder, 'sets.txt')] : [];
  const process = timedProcess(
    'node',
    [program, file, String(maxOrder), ...lists],
    RUNS,
    LIMIT_MS,
    join(folder, 'note.txt'),
  );
  if (!process) throw new Error('Our own program did not finish within the limit.');
  const printed = JSON.parse(process.stdout) as { probability: number };
  if (printed.probability !== lowest) throw new Error('Our engine answers otherwise in a process of its own.');
  return { process, algorithmMs: Math.min(...times), countByOrder: sets.countByOrder, probability: lowest, isExact };
}

function byAnalyser({ tree, probabilityOf, maxOrder }: ComparedTree, folder: string): AnalyserAnswer | null {
  const file = join(folder, 'tree.xml');
  writeFileSync(file, openPsaOf(tree, probabilityOf));
  return analysed(file, maxOrder, folder, RUNS, LIMIT_MS);
}

function writtenTree(tree: ComparedTree['tree'], probabilityOf: ReadonlyMap<string, number>): WrittenTree {
  const p = (id: string): number => probabilityOf.get(id) ?? 0;
  return {
    events: Object.fromEntries(tree.events.map((id) => [id, p(id)])),
    gates: Object.fromEntries([...tree.gates].map(([id, { inputs, ...gate }]) => [id, { ...gate, in: inputs }])),
    top: tree.top,
    causes: tree.causes.map((cause) => ({ ...cause, p: p(cause.id) })),
  };
}

function row({ tree, ours, its }: Result): Record<string, string> {
  const whole = ({ process }: OurAnswer | AnalyserAnswer): string =>
    `${process.bestMs.toFixed(0)} / ${process.medianMs.toFixed(0)}`;
  const memory = ({ process }: OurAnswer | AnalyserAnswer): string => process.peakMb?.toFixed(0) ?? 'not measured';
  const orNot = (say: (answer: AnalyserAnswer) => string): string => (its ? say(its) : 'not finished');
  return {
    tree: tree.name,
    order: String(tree.maxOrder),
    sets: String(ours.countByOrder.reduce((sum, n) => sum + n, 0)),
    probability: ours.isExact ? ours.probability.toPrecision(6) : 'bounds only',
    'ours, ms': ours.algorithmMs.toFixed(2),
    'its, ms': orNot(({ algorithmMs }) => algorithmMs.toFixed(2)),
    'our process, ms': whole(ours),
    'its process, ms': orNot(whole),
    'ours, MB': memory(ours),
    'its, MB': orNot(memory),
  };
}

/** Both must count the same sets and find the same chance, to the six digits the analyser prints. */
function compare({ tree, ours, its }: Result): void {
  if (!its) return;
  const trimmed = (counts: readonly number[]): string => counts.join(' ').replace(/( 0)+$/, '');
  if (trimmed(ours.countByOrder) !== trimmed(its.countByOrder))
    console.log(
      `MISMATCH in ${tree.name}: sets by order ${ours.countByOrder.join(' ')}, the analyser ${its.countByOrder.join(' ')}`,
    );
  if (ours.isExact && Math.abs(ours.probability / its.probability - 1) > 1e-5 && ours.probability !== its.probability)
    console.log(`MISMATCH in ${tree.name}: probability ${ours.probability}, the analyser ${its.probability}`);
}

function printAims(results: readonly Result[]): void {
  const both = results.flatMap(({ tree, ours, its }) => (its ? [{ tree, ours, its }] : []));
  const say = (aim: string, missed: readonly string[]): void =>
    console.log(`${aim}: ${missed.length === 0 ? 'kept on all' : `missed on ${missed.join('; ')}`}`);
  say(
    `Aim, algorithm within ${AIM_TIMES} times`,
    both.flatMap(({ tree, ours, its }) =>
      ours.algorithmMs > AIM_TIMES * its.algorithmMs
        ? [`${tree.name} (${(ours.algorithmMs / its.algorithmMs).toFixed(1)} times)`]
        : [],
    ),
  );
  say(
    'Aim, whole process never slower (best of each)',
    both.flatMap(({ tree, ours, its }) =>
      ours.process.bestMs > its.process.bestMs
        ? [`${tree.name} (by ${(ours.process.bestMs - its.process.bestMs).toFixed(0)} ms)`]
        : [],
    ),
  );
  const bare = timedProcess('node', ['-e', '0'], RUNS, LIMIT_MS, join(tmpdir(), 'unused-note.txt'));
  console.log(`A process of our runtime that does nothing takes ${bare?.bestMs.toFixed(0)} ms.`);
  console.log(
    `Not finished by the analyser: ${
      results
        .filter(({ its }) => !its)
        .map(({ tree }) => tree.name)
        .join('; ') || 'none'
    }`,
  );
}
