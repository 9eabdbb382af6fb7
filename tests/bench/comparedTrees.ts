import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { assess } from '../../core/assess.ts';
import type { FaultTree, Gate } from '../../core/faultTree/types.ts';
import type { ServiceId } from '../../core/model/services.ts';
import { studyFailures } from '../../core/redundancy/study.ts';
import { type ReadTree, readTree, type WrittenTree } from '../support/faultTrees.ts';
import { generatedVessel } from '../support/generatedVessel.ts';

/** A tree that both programs are given, and the order they look up to; all orders when null. */
export interface ComparedTree extends ReadTree {
  readonly name: string;
  readonly maxOrder: number;
}

/** Public trees under another licence: the variable names the folder that holds them. */
const FOLDER = process.env.FAULT_TREE_BENCHMARKS ?? '';
const PUBLISHED = ['chinese', 'baobab2', 'das9201', 'isp9604', 'edfpa15q', 'edf9202'];

/** @returns the trees, and the names of those that are not at hand */
export function comparedTrees(): { trees: readonly ComparedTree[]; missing: readonly string[] } {
  const file = (name: string): string => join(FOLDER, `${name}.json`);
  const [here, missing] = [PUBLISHED.filter((name) => existsSync(file(name))), [] as string[]];
  for (const name of PUBLISHED) if (!here.includes(name)) missing.push(name);
  const published = here.map((name) => ({
    name,
    maxOrder: 4,
    ...readTree(JSON.parse(readFileSync(file(name), 'utf8')) as WrittenTree),
  }));
  const votes = [vote(3, 20), vote(5, 25), vote(8, 30), vote(15, 59)];
  return { trees: [...published, ...boatTrees(), ...votes], missing };
}

/** At least k of n, all events 0.01; looked up to the order the sets have. */
function vote(k: number, n: number): ComparedTree {
  const events = Array.from({ length: n }, (_, index) => `e${index}`);
  const gates = new Map<string, Gate>([['top', { op: 'atleast', k, inputs: events }]]);
  const tree: FaultTree = { events, gates, top: 'top', causes: [] };
  return { name: `vote, ${k} of ${n}`, maxOrder: k, tree, probabilityOf: new Map(events.map((id) => [id, 0.01])) };
}

const SHOWN: readonly ServiceId[] = ['voice-fixed', 'digital-alert', 'safety-information'];

/** Services of a made-up boat of 500 items, with the middle of their assumed chances; and the loss of any two of all. */
function boatTrees(): readonly ComparedTree[] {
  const project = generatedVessel(500);
  const { model, tops, chances, labels } = studyFailures(project, assess(project).paths);
  const probabilityOf = new Map(
    chances.map(({ id, nominal }) => [labels.has(id) ? id : `cause:${id}`, nominal] as const),
  );
  const of = (name: string, gates: ReadonlyMap<string, Gate>, top: string): ComparedTree => ({
    name: `boat of 500 items, ${name}`,
    maxOrder: 3,
    tree: { ...model, gates, top },
    probabilityOf,
  });
  const working = [...tops].filter(([id]) => id !== 'long-range' && id !== 'beacon').map(([, top]) => top);
  const two = new Map([...model.gates, ['two', { op: 'atleast', k: 2, inputs: working }] as const]);
  return [...SHOWN.map((id) => of(id, model.gates, tops.get(id) ?? '')), of('any two services', two, 'two')];
}
