import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cause, FaultTree, Gate } from '../../core/redundancy/tree.ts';
import { singlePoints } from '../../core/redundancy/tree.ts';

/**
 * Single points of failure of small published fault trees. Every case in data/redundancyOrder1.json names where its
 * answer comes from: sample trees of a public fault-tree analyser, NUREG-0492 (chapters VIII and XI), Vesely 1970,
 * Barlow and Proschan 1975, or exhaustive enumeration for the invented ones.
 */
interface PublishedCase {
  id: string;
  title: string;
  events: string[];
  gates: Record<string, { op: Gate['op']; k?: number; in: string[] }>;
  top: string;
  causes?: Cause[];
  beta?: { id: string; members: string[] }[];
  singlePoints: string[];
  lostFromStart: boolean;
}

const file = new URL('./data/redundancyOrder1.json', import.meta.url);
const { cases } = JSON.parse(readFileSync(file, 'utf8')) as { cases: PublishedCase[] };

function treeOf(published: PublishedCase): FaultTree {
  const gates = new Map<string, Gate>();
  for (const [id, gate] of Object.entries(published.gates)) {
    gates.set(id, { op: gate.op, inputs: gate.in, ...(gate.k === undefined ? {} : { k: gate.k }) });
  }
  // A beta group is one more event that all its members share: to the structure, a cause that hits them all.
  const shared = (published.beta ?? []).map((group) => ({ id: group.id, hits: group.members }));
  return { events: published.events, gates, top: published.top, causes: [...(published.causes ?? []), ...shared] };
}

describe('single points of failure against published trees', () => {
  it('has all twenty cases', () => {
    expect(cases).toHaveLength(20);
  });

  it.each(cases.map((published) => [published.id, published] as const))('%s', (_, published) => {
    expect(singlePoints(treeOf(published))).toEqual({
      lostFromStart: published.lostFromStart,
      ids: published.singlePoints,
    });
  });

  it('finds what two radios behind one splitter hang on (invented; removing each node in turn)', () => {
    const chain = (id: string, ...inputs: string[]): [string, Gate] => [id, { op: 'or', inputs }];
    const gates = new Map<string, Gate>([
      chain('CHAIN1', 'POWER', 'RAD1', 'SPLIT', 'CABLE', 'ANT'),
      chain('CHAIN2', 'POWER', 'RAD2', 'SPLIT', 'CABLE', 'ANT'),
      chain('CHAIN3', 'POWER', 'RAD3', 'ANT3'),
      ['TWO', { op: 'and', inputs: ['CHAIN1', 'CHAIN2'] }],
      ['THREE', { op: 'and', inputs: ['CHAIN1', 'CHAIN2', 'CHAIN3'] }],
    ]);
    const events = ['POWER', 'RAD1', 'RAD2', 'RAD3', 'SPLIT', 'CABLE', 'ANT', 'ANT3'];
    expect(singlePoints({ events, gates, top: 'TWO', causes: [] }).ids).toEqual(['ANT', 'CABLE', 'POWER', 'SPLIT']);
    expect(singlePoints({ events, gates, top: 'THREE', causes: [] }).ids).toEqual(['POWER']);
  });
});
