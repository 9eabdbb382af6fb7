import { describe, expect, it } from 'vitest';
import { minimalCutSets } from '../../../core/faultTree/cutSets.ts';
import { importanceOf } from '../../../core/faultTree/importance.ts';
import { addColumn, downColumns, emptyColumns, singlePoints } from '../../../core/faultTree/scenarios.ts';
import { solverOf } from '../../../core/faultTree/solver.ts';
import type { FaultTree, Gate } from '../../../core/faultTree/types.ts';
import { unavailabilityOf } from '../../../core/faultTree/unavailability.ts';

// What no answer could be right for gets a sentence that says what, where and how to mend it, from every function of the engine.

const tree = (gates: Record<string, Gate>, events: string[], top = 'TOP'): FaultTree => ({
  events,
  gates: new Map(Object.entries(gates)),
  top,
  causes: [],
});
const or = (...inputs: string[]): Gate => ({ op: 'or', inputs });
const and = (...inputs: string[]): Gate => ({ op: 'and', inputs });
const atLeast = (k: number | undefined, ...inputs: string[]): Gate => ({
  op: 'atleast',
  inputs,
  ...(k === undefined ? {} : { k }),
});
const chances = (of: Record<string, number>) => new Map(Object.entries(of));

/** A refusal that is a RangeError of just this sentence. */
const refuses = (work: () => unknown, sentence: string): void => {
  expect(work).toThrow(RangeError);
  expect(work).toThrow(sentence);
};

/** Every function that is given a tree whole. */
const WHOLE: readonly (readonly [string, (tree: FaultTree) => unknown])[] = [
  ['minimalCutSets', (each) => minimalCutSets(each)],
  ['unavailabilityOf', (each) => unavailabilityOf(each)],
  ['singlePoints', (each) => singlePoints(each)],
  ['solverOf, cut sets', (each) => solverOf(each).cutSets(each.top)],
  ['solverOf, unavailability', (each) => solverOf(each).unavailability(each.top)],
  ['solverOf, events', (each) => solverOf(each).eventsOf(each.top)],
];

describe.each(WHOLE)('%s', (_, given) => {
  const refusesTree = (broken: FaultTree, sentence: string): void => refuses(() => given(broken), sentence);

  it('says where a circle runs', () => {
    const circle = tree({ TOP: or('CHARGER', 'a'), CHARGER: and('BUS'), BUS: or('CHARGER') }, ['a']);
    refusesTree(circle, 'The fault tree runs in a circle: CHARGER, BUS, CHARGER. Cut it where a supply feeds itself.');
    refusesTree(tree({ TOP: or('TOP') }, []), 'The fault tree runs in a circle: TOP, TOP. Cut it');
  });

  it('says where a circle runs that the top does not hang on', () => {
    refusesTree(tree({ TOP: or('a'), P: or('Q'), Q: or('P') }, ['a']), 'The fault tree runs in a circle: P, Q, P.');
  });

  it('says which top is not there', () => {
    refusesTree(
      tree({ TOP: or('a') }, ['a'], 'NOT'),
      'The top "NOT" is neither a gate nor an event of the fault tree: name one of its gates as the top.',
    );
  });

  it('says which name is unknown or used twice', () => {
    refusesTree(
      tree({ TOP: or('a', 'x') }, ['a']),
      'Gate "TOP" has the input "x", which is nowhere in the fault model: add it, or take it out of the gate.',
    );
    refusesTree(
      tree({ a: or() }, ['a'], 'a'),
      'The fault tree uses the name "a" twice: give each event, gate and cause its own.',
    );
    refusesTree(
      { ...tree({ TOP: or('a') }, ['a']), causes: [{ id: 'FIRE', hits: ['a', 'x'] }] },
      'Cause "FIRE" hits "x", which is nowhere in the fault model: add it, or leave it out of the cause.',
    );
  });

  it('says which vote has no number', () => {
    refusesTree(
      tree({ TOP: atLeast(undefined, 'a', 'b') }, ['a', 'b']),
      'Gate "TOP" is a vote without a number: say how many of its inputs it takes.',
    );
  });

  it('says which cause hits another', () => {
    refusesTree(
      {
        ...tree({ TOP: or('a') }, ['a']),
        causes: [
          { id: 'FIRE', hits: ['a'] },
          { id: 'STRIKE', hits: ['FIRE'] },
        ],
      },
      'Cause "STRIKE" hits the cause "FIRE": let it hit what that one hits instead.',
    );
  });

  it.each([1.5, -1, Number.NaN])('says which vote asks for no whole number: %s', (k) => {
    refusesTree(
      tree({ TOP: atLeast(k, 'a', 'b') }, ['a', 'b']),
      `Gate "TOP" asks for at least ${k} of its inputs: that must be a whole number from 0.`,
    );
  });
});

describe('orders and nodes', () => {
  const fine = tree({ TOP: or('a', 'b') }, ['a', 'b']);

  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])('a highest order of %s is refused', (order) => {
    const sentence = `The highest order of cut sets must be a whole number from 1, not ${order}.`;
    refuses(() => minimalCutSets(fine, order), sentence);
    refuses(() => solverOf(fine).cutSets('TOP', order), sentence);
  });

  it.each([0, 2.5, Number.NaN])('%s nodes to a diagram are refused', (nodes) => {
    refuses(
      () => unavailabilityOf(fine, nodes),
      `The nodes a diagram may have must be a whole number from 1, not ${nodes}.`,
    );
  });
});

describe('probabilities', () => {
  const both = tree({ TOP: and('a', 'b') }, ['a', 'b']);
  const good = chances({ a: 0.1, b: 0.2 });
  const given: readonly (readonly [string, (of: ReadonlyMap<string, number>) => unknown])[] = [
    ['unavailabilityOf', (of) => unavailabilityOf(both)(of)],
    ['the bounds of unavailabilityOf', (of) => unavailabilityOf(both, 1)(of)],
    ['solverOf', (of) => solverOf(both).unavailability('TOP')(of)],
    ['importanceOf', (of) => importanceOf(unavailabilityOf(both)(good), minimalCutSets(both), of)],
    ['a top that is one event', (of) => unavailabilityOf({ ...both, top: 'a' })(of)],
    ['rareEventSum', (of) => minimalCutSets(both).rareEventSum((id) => of.get(id) as number)],
    [
      'rareEventSum of one event',
      (of) => minimalCutSets({ ...both, top: 'a' }).rareEventSum((id) => of.get(id) as number),
    ],
  ];

  it.each(given)('%s says which is missing', (_, work) => {
    refuses(() => work(chances({ b: 0.1 })), 'No probability is given for "a": state one from 0 to 1.');
  });

  it.each(given)('%s says which is none', (_, work) => {
    for (const p of [1.2, -0.1, Number.NaN, Number.POSITIVE_INFINITY])
      refuses(
        () => work(chances({ a: p, b: 0.1 })),
        `The probability of "a" must be from 0 to 1, not ${p}: correct it.`,
      );
    expect(() => work(good)).not.toThrow();
  });
});

describe('downColumns', () => {
  const column = emptyColumns(1);
  addColumn(column, 0);
  const at = (gates: Record<string, Gate>, width = 1) =>
    downColumns(new Map(Object.entries(gates)), new Map([['a', column]]), width)('TOP');

  it('says where a circle runs', () => {
    refuses(
      () => at({ TOP: or('a', 'BUS'), BUS: or('TOP') }),
      'The fault tree runs in a circle: "BUS" hangs on "TOP", which hangs on it. Cut it where a supply feeds itself.',
    );
  });

  it('says which vote asks for no whole number', () => {
    refuses(() => at({ TOP: atLeast(undefined, 'a') }), 'Gate "TOP" is a vote without a number');
    refuses(() => at({ TOP: atLeast(0.5, 'a') }), 'Gate "TOP" asks for at least 0.5 of its inputs');
  });

  it.each([-1, 0.5, Number.NaN])('says that %s is no number of scenarios', (width) => {
    refuses(() => at({ TOP: or('a') }, width), `The number of scenarios must be a whole number from 0, not ${width}.`);
  });
});
