import { describe, expect, it } from 'vitest';
import { causeId } from '../../../core/redundancy/study.ts';
import { nodesDown } from '../../../core/treeDiagram/state.ts';
import { outcomeWords } from '../../../core/treeDiagram/wording.ts';
import { DEMOS, demo, treesOf } from './boats.ts';

// What is said beside the tree of a failure, against the matrix of the same boat.

const BY_HAND = 'it takes all fitted ways; what is left is a set carried by hand';

/** The words for every row of the matrix and service of a boat, with the grade and ways the matrix has there. */
function outcomesOf(name: (typeof DEMOS)[number]) {
  const { redundancy, trees } = treesOf(demo(name));
  const carried = new Set(redundancy.ways.filter((way) => way.carried).map(({ id }) => id));
  return redundancy.matrix
    .filter(({ event }) => event.kind !== 'none')
    .flatMap(({ event, states }) =>
      states.map(({ serviceId, grade, liveWayIds }) => {
        const tree = trees.find((each) => each.serviceId === serviceId);
        const down = tree ? nodesDown(tree, new Set([...event.downIds, causeId(event.id)])) : new Set();
        const words = outcomeWords(down.has(tree?.top.id ?? ''), grade);
        const isByHand = liveWayIds.length > 0 && liveWayIds.every((id) => carried.has(id));
        return { cell: `${event.label}: ${serviceId}`, words, grade, isByHand };
      }),
    );
}

describe.each(DEMOS)('%s', (name) => {
  it('has the tree say that a service is gone where the matrix says lost, and nowhere else', () => {
    for (const { cell, words, grade, isByHand } of outcomesOf(name)) {
      expect(words === 'it takes this service away', cell).toBe(grade === 'lost');
      expect(words === BY_HAND, cell).toBe(isByHand);
    }
  });
});

describe('a set carried by hand', () => {
  it('is named where it is all that is left', () => {
    expect(DEMOS.flatMap(outcomesOf).filter(({ words }) => words === BY_HAND).length).toBeGreaterThan(0);
  });
});
