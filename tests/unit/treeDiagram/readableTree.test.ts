import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FaultModel, Gate } from '../../../core/faultTree/types.ts';
import { readableTree } from '../../../core/treeDiagram/readableTree.ts';
import { closedAtFirst, nodesDown, nodesOf } from '../../../core/treeDiagram/state.ts';
import type { ReadableTree } from '../../../core/treeDiagram/types.ts';
import { boatOf, boatPlans } from '../../support/generatedBoats.ts';
import { DEMOS, demo, isDownIn, type Studied, studyOf, treesOf, withHits } from './boats.ts';

// The measure of every tree is the failure model it is made from, evaluated gate by gate in boats.ts, with no code shared.

const SEED = { seed: 20_260 };

/** A tree says "lost" for exactly the sets of parts and causes its model does. */
function agrees(tree: ReadableTree, model: FaultModel, top: string, down: readonly string[]): void {
  const whole = isDownIn(model, top, new Set(down));
  expect(nodesDown(tree, withHits(model, down)).has(tree.top.id)).toBe(whole);
  // A cause stands for all it takes, whether or not that is counted besides.
  expect(nodesDown(tree, new Set(down)).has(tree.top.id)).toBe(whole);
}

/** Events below a gate that something can take away. */
function eventsOf(model: FaultModel, top: string): ReadonlySet<string> {
  const all = new Set([...model.events, ...model.causes.map(({ id }) => id)]);
  const found = new Set<string>();
  const walk = (id: string): void => {
    if (!isDownIn(model, id, all)) return;
    const gate = model.gates.get(id);
    if (gate) for (const input of gate.inputs) walk(input);
    else found.add(id);
  };
  walk(top);
  return found;
}

function checkBoat({ study, trees }: Studied): void {
  const { model } = study;
  for (const tree of trees) {
    const top = study.tops.get(tree.serviceId) ?? '';
    const drawn = new Set([...nodesOf(tree.top)].map(({ modelId }) => modelId));
    expect([...eventsOf(model, top)].filter((id) => !drawn.has(id))).toEqual([]);
    const ids = [...nodesOf(tree.top)].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const cuts = study.cuts.find(({ serviceId }) => serviceId === tree.serviceId);
    const alone = [...nodesOf(tree.top)].filter(({ kind, isAlone }) => isAlone && /^(event|cause)$/.test(kind));
    expect([...new Set(alone.map(({ modelId }) => modelId))].toSorted()).toEqual(cuts?.singles.toSorted());
    for (const { kind, target, letter } of nodesOf(tree.top)) {
      if (kind !== 'reference') continue;
      const branch = [...nodesOf(tree.top)].find(({ id }) => id === target);
      expect(branch?.kind).toBe('gate');
      expect(branch?.letter).toBe(letter);
    }
  }
}

describe.each(DEMOS)('%s', (name) => {
  const studied = treesOf(demo(name));
  const { study, trees } = studied;

  it('draws every part of a service’s tree, its single points heavy, and every reference leads somewhere', () => {
    checkBoat(studied);
  });

  it('says the same as the model for any few or many things down', () => {
    const ids = [...study.model.events, ...study.model.causes.map(({ id }) => id)];
    fc.assert(
      fc.property(
        fc.constantFrom(...trees),
        fc.subarray(ids),
        fc.subarray(ids, { maxLength: 3 }),
        (tree, many, few) => {
          for (const down of [many, few]) agrees(tree, study.model, study.tops.get(tree.serviceId) ?? '', down);
        },
      ),
      { ...SEED, numRuns: 300 },
    );
  });

  it('names everything by tag, never by an id of the document', () => {
    const { items, runs, feeds, dataLinks } = demo(name);
    const ids = new Set([...items, ...runs, ...feeds, ...dataLinks].map(({ id }) => id));
    const tags = new Set([
      ...items.map(({ tag }) => tag),
      ...[...runs, ...feeds, ...dataLinks].map(({ number }) => number),
    ]);
    for (const tree of trees) {
      for (const { label, remark } of nodesOf(tree.top)) {
        expect(label).not.toMatch(/[<>/]|\b(way|supply|feed-chain|position|own-fix|item|cause):|unnamed|undefined/);
        const words = `${label} ${remark}`.split(/[\s,()]+/);
        expect(words.filter((word) => ids.has(word) && !tags.has(word))).toEqual([]);
      }
    }
  });
});

/** Models of any shape: shared gates, votes, constants, causes that hit anything; the last gate is the top. */
const models: fc.Arbitrary<FaultModel> = fc
  .record({
    events: fc.integer({ min: 1, max: 7 }),
    gates: fc.array(
      fc.record({
        op: fc.constantFrom<Gate['op']>('and', 'or', 'or', 'atleast'),
        picks: fc.array(fc.nat({ max: 30 }), { maxLength: 4 }),
        k: fc.integer({ min: 1, max: 3 }),
      }),
      { minLength: 1, maxLength: 9 },
    ),
    causes: fc.array(fc.array(fc.nat({ max: 30 }), { minLength: 1, maxLength: 4 }), { maxLength: 3 }),
  })
  .map((plan) => {
    const events = Array.from({ length: plan.events }, (_, i) => `item:e${i}`);
    const gates = new Map<string, Gate>();
    for (const [index, { op, picks, k }] of plan.gates.entries()) {
      const known = [...events, ...gates.keys()];
      const inputs = picks.map((pick) => known[pick % known.length] ?? '');
      const kinds = ['way', 'supply', 'feed-chain', 'position', 'own-fix'];
      const id = index === plan.gates.length - 1 ? 'service:voice-fixed' : `${kinds[index % kinds.length]}:g${index}`;
      gates.set(id, op === 'atleast' ? { op, k, inputs } : { op, inputs });
    }
    const hits = plan.causes.map((picks) => picks.map((pick) => events[pick % events.length] ?? ''));
    return { events, gates, causes: hits.map((each, index) => ({ id: `cause:c${index}`, hits: each })) };
  });

describe('any model', () => {
  it('every subset of events and causes gives the same answer as the gates themselves', () => {
    fc.assert(
      fc.property(models, (model) => {
        const { study, redundancy } = studyOf(model);
        const tree = readableTree(study, redundancy, 'voice-fixed');
        const ids = [...model.events, ...model.causes.map(({ id }) => id)];
        for (let bits = 0; bits < 2 ** ids.length; bits += 1)
          agrees(
            tree,
            model,
            'service:voice-fixed',
            ids.filter((_, index) => bits & (1 << index)),
          );
      }),
      { ...SEED, numRuns: 150 },
    );
  });
});

describe('a branch that a common cause takes only in one of its places', () => {
  // C takes a. It takes the whole first way (a alone does), so it stands there and not in the branch below; in the second way it
  // takes a part of the same branch only, which is then another branch and must not be referred to.
  const model: FaultModel = {
    events: ['item:a', 'item:b', 'item:c', 'item:d', 'item:x'],
    gates: new Map<string, Gate>([
      ['supply:any', { op: 'or', inputs: ['item:b', 'item:c', 'item:d'] }],
      ['position:both', { op: 'and', inputs: ['item:a', 'supply:any'] }],
      ['way:1', { op: 'or', inputs: ['item:a', 'position:both'] }],
      ['way:2', { op: 'or', inputs: ['position:both', 'item:x'] }],
      ['service:voice-fixed', { op: 'and', inputs: ['way:1', 'way:2'] }],
    ]),
    causes: [{ id: 'cause:C', hits: ['item:a'] }],
  };

  it('is drawn again where it says something else', () => {
    const { study, redundancy } = studyOf(model);
    const tree = readableTree(study, redundancy, 'voice-fixed');
    agrees(tree, model, 'service:voice-fixed', ['cause:C', 'item:b']);
    agrees(tree, model, 'service:voice-fixed', ['cause:C']);
  });
});

describe('boats made up at random', () => {
  it('keep all that is promised of the demo boats', () => {
    fc.assert(
      fc.property(boatPlans(5), fc.infiniteStream(fc.boolean()), (plan, coin) => {
        const studied = treesOf(boatOf(plan));
        checkBoat(studied);
        const { model, tops } = studied.study;
        for (const tree of studied.trees) {
          const ids = [...model.events, ...model.causes.map(({ id }) => id)];
          const down = ids.filter(() => coin.next().value === true && coin.next().value === true);
          agrees(tree, model, tops.get(tree.serviceId) ?? '', down);
        }
      }),
      { ...SEED, numRuns: 25 },
    );
  });
});

describe('Vessarine, as an owner reads her', () => {
  const { study, redundancy } = treesOf(demo('vessarine'));
  const voice = readableTree(study, redundancy, 'voice-fixed');
  const labels = [...nodesOf(voice.top)].map(({ label }) => label);

  it('says why the fixed VHF is lost, level by level (her drawing: both sets hang on breaker panel N1 and bank B1)', () => {
    expect(voice.top.label).toBe('Voice, fixed VHF, lost');
    expect(labels).toEqual(
      expect.arrayContaining([
        'Lightning on the mast',
        'Both ways are gone',
        'VHF-1 on A1 is gone',
        'VHF-2 on A2 is gone',
        'VHF-1 has no supply',
        'VHF-1 cannot reach A1',
        'W31, cable',
        'J3, joint',
        'Mast',
      ]),
    );
    const panel = [...nodesOf(voice.top)].filter(({ label }) => label === 'N1 gives nothing');
    expect(panel.map(({ kind, isAlone, places }) => [kind, isAlone, places])).toEqual([
      ['gate', true, 2],
      ['reference', true, 2],
    ]);
  });

  it('numbers the same thing alike wherever it stands', () => {
    const alert = readableTree(study, redundancy, 'digital-alert');
    const lightning = [...nodesOf(alert.top)].filter(({ label }) => label === 'Lightning on the mast');
    expect(lightning.length).toBeGreaterThan(1);
    expect(new Set(lightning.map(({ mark }) => mark)).size).toBe(1);
    expect(lightning[0]?.places).toBe(lightning.length);
  });

  it('closes what lies deep in a large tree at first, but nothing that holds a single point of failure', () => {
    for (const id of redundancy.services) {
      const tree = readableTree(study, redundancy, id);
      const closed = closedAtFirst(tree);
      if ([...nodesOf(tree.top)].length > 40) expect(closed.size).toBeGreaterThan(0);
      for (const node of nodesOf(tree.top))
        if (closed.has(node.id)) expect([...nodesOf(node)].some(({ isAlone }) => isAlone)).toBe(false);
    }
  });

  it('says that a service is lost as drawn, and why', () => {
    const seen = readableTree(study, redundancy, 'ais-transmit');
    expect(seen.top.kind).toBe('certain');
    expect(seen.top.remark).toMatch(/^Lost as drawn\. \S/);
  });

  it('refuses a service that is not shown', () => {
    expect(() => readableTree(study, redundancy, 'person-overboard')).toThrow(/not shown for this boat/);
  });
});
