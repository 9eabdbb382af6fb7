import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { setRedundancy } from '../../../core/edit/redundancy.ts';
import { addColumn, downColumns, emptyColumns, hasColumn } from '../../../core/faultTree/scenarios.ts';
import { itemSchema, type Project, type RedundancySettings } from '../../../core/model/project.ts';
import { SERVICES } from '../../../core/model/services.ts';
import { studyFailures } from '../../../core/redundancy/study.ts';
import type { FailureStudy } from '../../../core/redundancy/types.ts';

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}
const studied = (project: Project): FailureStudy => studyFailures(project, assess(project).paths);
const DEMOS = ['brannoch-tern', 'pelluna', 'vessarine'].map((name) => [name, demo(name)] as const);

/** Whether a service is lost with just these down, causes taking what they hit. */
function isLost({ model, tops }: FailureStudy, top: string, down: ReadonlySet<string>): boolean {
  const columns = emptyColumns(1);
  addColumn(columns, 0);
  const hit = new Set(down);
  for (const cause of model.causes) if (down.has(cause.id)) for (const id of cause.hits) hit.add(id);
  expect([...tops.values()]).toContain(top);
  return hasColumn(downColumns(model.gates, new Map([...hit].map((id) => [id, columns])), 1)(top), 0);
}

describe.each(DEMOS)('%s', (_, project) => {
  const study = studied(project);

  it('names the single points of the matrix, and the common causes beside them', () => {
    const { singlePoints } = assess(project).redundancy;
    for (const { serviceId, singles } of study.cuts) {
      const components = singles.filter((id) => !id.startsWith('cause:'));
      const known = singlePoints
        .filter(({ serviceIds }) => serviceIds.includes(serviceId))
        .map(({ componentId }) => componentId);
      expect(components).toEqual(known.toSorted());
    }
  });

  it('what-if and cut sets agree on every subset tried', () => {
    const ids = [...study.model.events, ...study.model.causes.map(({ id }) => id)];
    fc.assert(
      fc.property(
        fc.constantFrom(...study.cuts),
        fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 3 }),
        (cuts, down) => {
          const top = study.tops.get(cuts.serviceId) ?? '';
          const set = new Set(down);
          const byPairs = cuts.pairs.some(({ either, or }) =>
            either.some((a) => set.has(a) && or.some((b) => b !== a && set.has(b))),
          );
          const bySets =
            cuts.lostFromStart ||
            cuts.singles.some((id) => set.has(id)) ||
            byPairs ||
            cuts.triples.some((triple) => triple.every((id) => set.has(id)));
          if (cuts.tripleCount === cuts.triples.length) expect(isLost(study, top, set)).toBe(bySets);
        },
      ),
      { seed: 31, numRuns: 300 },
    );
  });

  it('gives chances in their order, exact, with the largest share first', () => {
    for (const { serviceId } of study.cuts) {
      const risk = study.riskOf(serviceId);
      const { low, nominal, high, isExact, rows } = risk;
      expect(study.riskOf(serviceId)).toBe(risk);
      expect(isExact).toBe(true);
      expect(low).toBeLessThanOrEqual(nominal);
      expect(nominal).toBeLessThanOrEqual(high);
      const shares = rows.map(({ ifPerfect }) => ifPerfect ?? 0);
      expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    }
  });

  it('names everything that can fail in the trees', () => {
    const ids = [...study.model.events, ...study.model.causes.map(({ id }) => id)];
    expect([...study.labels.keys()].sort()).toEqual(ids.sort());
    for (const { label } of study.labels.values()) expect(label).not.toBe('');
  });

  it('says of every chance where it comes from, and calls a guess one', () => {
    for (const { low, nominal, high, source, basis } of study.chances) {
      expect(0 <= low && low <= nominal && nominal <= high && high <= 1).toBe(true);
      expect(source).not.toBe('');
      expect(['published', 'assumed', 'stated']).toContain(basis);
    }
  });
});

describe('two separate and independent means of alert (47 CFR 80.1081(a), SOLAS IV/4)', () => {
  const inArea = (name: string, seaArea: RedundancySettings['seaArea']): FailureStudy =>
    studied(setRedundancy(demo(name), { seaArea }));

  it('Brannoch Tern has two wherever she goes: text by satellite and a beacon, each on a battery of its own', () => {
    for (const seaArea of ['A1', 'A2', 'A3'] as const) {
      const { verdict, pair } = inArea('brannoch-tern', seaArea).independence;
      expect(verdict).toBe('independent');
      expect(pair?.sharedComponents).toEqual([]);
    }
  });

  it('Pelluna has two VHF sets, which are one radio service, and none once out of reach of the coast', () => {
    expect(inArea('pelluna', 'A1').independence.verdict).toBe('one-service');
    const { verdict, sentence, countedIds, means } = inArea('pelluna', 'A2').independence;
    expect(verdict).toBe('none');
    expect(means).toHaveLength(2);
    expect(countedIds).toEqual([]);
    expect(sentence).toBe(
      'Nothing aboard can send a distress alert ashore. Not counted: VHF-A, VHF-B, whose service does not reach the shore from sea area A2.',
    );
  });

  it('Vessarine has two of everything near the coast, and the beacon alone on the ocean', () => {
    expect(inArea('vessarine', 'A1').independence.verdict).toBe('independent');
    expect(inArea('vessarine', 'A3').independence.verdict).toBe('one-service');
  });

  it('two means on one bank share it', () => {
    const project = setRedundancy(demo('brannoch-tern'), { seaArea: 'A1' });
    const ownBattery = { figures: {}, traits: { ownBattery: false } };
    const items = project.items
      .filter(({ tag }) => tag !== 'BC-1')
      .map((item) => (item.tag === 'SAT-1' ? { ...item, overrides: ownBattery } : item));
    const { verdict, pair, sentence } = studied({ ...project, items }).independence;
    expect(verdict).toBe('shared');
    const bank = assess(project).redundancy.components.find(({ label }) => label === 'B1')?.id;
    expect(pair?.sharedComponents).toContain(bank);
    expect(sentence).toMatch(/both hang on .*B1.* and both are lost to .*Lightning on the main mast/);
  });
});

describe('means of alert that only seem to be', () => {
  it('a set that has no supply as drawn is none, and shares nothing with nobody', () => {
    const project = setRedundancy(demo('vessarine'), { seaArea: 'A1' });
    const [vhf] = project.items.filter(({ tag }) => tag === 'VHF-1');
    const charger = itemSchema.parse({ id: 'ch', tag: 'CH', partId: 'charger-mains', position: vhf?.position });
    const feeds = project.feeds.map((feed) =>
      feed.to.itemId === vhf?.id ? { ...feed, from: { itemId: 'ch', portId: 'out' } } : feed,
    );
    const { means } = studied({ ...project, items: [...project.items, charger], feeds }).independence;
    expect(means.map(({ label }) => label)).not.toContain('VHF-1');
  });

  it('with an event left out the sentence says that only what is tried was looked at', () => {
    const project = setRedundancy(demo('vessarine'), { seaArea: 'A1', excludedEventIds: ['lightning'] });
    expect(studied(project).independence.sentence).toMatch(/no one event that is tried takes both/);
  });
});

describe('what takes a service from full', () => {
  it('is never harder than what loses it, and says so where it is not full as drawn', () => {
    for (const [, project] of DEMOS) {
      const study = studied(project);
      const asDrawn = assess(project).redundancy.matrix[0]?.states;
      for (const { serviceId, singles, lostFromStart } of study.cuts) {
        const full = study.cutsOfFull(serviceId);
        const grade = asDrawn?.find((state) => state.serviceId === serviceId)?.grade;
        expect(full.lostFromStart).toBe(grade !== 'full');
        if (!full.lostFromStart && !lostFromStart) expect(full.singles).toEqual(expect.arrayContaining([...singles]));
      }
    }
  });

  it('the catamaran keeps full voice only by the masthead: its feeder alone takes her from full, and not from voice', () => {
    const study = studied(demo('vessarine'));
    const w31 = assess(demo('vessarine')).redundancy.components.find(({ label }) => label === 'W31')?.id ?? '';
    expect(study.cutsOfFull('voice-fixed').singles).toContain(w31);
    expect(study.cuts.find(({ serviceId }) => serviceId === 'voice-fixed')?.singles).not.toContain(w31);
  });
});

describe('a service that is not shown', () => {
  it('is refused with its name', () => {
    const study = studied(demo('brannoch-tern'));
    const hidden = SERVICES.find(({ id }) => !study.tops.has(id));
    expect(() => study.riskOf(hidden?.id ?? 'voice-fixed')).toThrow(`"${hidden?.id}" is not shown`);
  });
});

describe('chances in the user’s own words', () => {
  it('come before any assumption, by kind and by id', () => {
    const project = demo('vessarine');
    const stated = { lowPercent: 1, percent: 50, highPercent: 60, source: 'own log' };
    const bank = assess(project).redundancy.components.find(({ kind }) => kind === 'bank');
    const with50: Project = {
      ...project,
      settings: {
        ...project.settings,
        redundancy: { ...project.settings.redundancy, chances: { [bank?.id ?? '']: stated } },
      },
    };
    const chance = studied(with50).chances.find(({ id }) => id === bank?.id);
    expect(chance).toMatchObject({ low: 0.01, nominal: 0.5, high: 0.6, basis: 'stated', source: 'own log' });
    const voice = (each: Project): number => studied(each).riskOf('voice-fixed').nominal;
    expect(voice(with50)).toBeGreaterThan(voice(project));
  });

  it('a longer passage never makes anything likelier to hold', () => {
    const project = demo('brannoch-tern');
    const days = (passageDays: number): Project => ({
      ...project,
      settings: { ...project.settings, redundancy: { ...project.settings.redundancy, passageDays } },
    });
    const [short, long] = [studied(days(2)), studied(days(60))];
    for (const { serviceId } of short.cuts) {
      expect(long.riskOf(serviceId).nominal).toBeGreaterThanOrEqual(short.riskOf(serviceId).nominal - 1e-12);
    }
  });
});
