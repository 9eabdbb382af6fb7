import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { CATALOGUE } from '../../../core/catalogue/catalogue.ts';
import { isFigureOf } from '../../../core/document/overrides.ts';
import { addCompartment, addFitting, addMast, setBoat } from '../../../core/edit/boat.ts';
import { resetItemFigure, setItemFigure } from '../../../core/edit/figures.ts';
import { addPlace } from '../../../core/edit/places.ts';
import { boatKindSchema } from '../../../core/model/boat.ts';
import { newProject } from '../../../core/model/defaults.ts';
import { figure } from '../../../core/model/figure.ts';
import {
  itemFactsSchema,
  measurementSchema,
  type Project,
  projectSchema,
  runFactsSchema,
} from '../../../core/model/project.ts';
import { type FactSpec, ITEM_FACTS, itemFactKeys, RUN_FACTS } from '../../../renderer/panels/particulars/facts.ts';
import {
  freeName,
  newCompartment,
  newDeckhouse,
  newFitting,
  newMast,
  newPlace,
} from '../../../renderer/panels/particulars/newOnes.ts';
import {
  commonStatus,
  countWords,
  decimalsOf,
  figureChange,
  figuresNotGiven,
  findingsAbout,
  isIsoDate,
  lossesOfRun,
  servicesLostWith,
  servicesUsing,
} from '../../../renderer/panels/particulars/reckon.ts';
import { MEASUREMENTS } from '../../../renderer/panels/particulars/words.ts';

const ketch: Project = projectSchema.parse(
  JSON.parse(readFileSync(new URL('../../../assets/demo/brannoch-tern.backstay', import.meta.url), 'utf8')),
);
const itemId = (tag: string): string => {
  const item = ketch.items.find((each) => each.tag === tag);
  if (!item) throw new Error(`no ${tag} in the demo boat`);
  return item.id;
};

describe('an edit of one column of a figure', () => {
  const known = figure(25, 5, 'standard', 'a rule');

  it('takes neither basis nor source with another value of a catalogue figure', () => {
    expect(figureChange(known, false, { value: 20 })).toEqual({ value: 20, tolerance: 5 });
  });

  it('keeps what is known of an own value that is put right', () => {
    expect(figureChange(known, true, { value: 20 })).toEqual({ ...known, value: 20 });
  });

  it('keeps value and source when only the tolerance or the basis changes', () => {
    expect(figureChange(known, false, { tolerance: 1 })).toEqual({ ...known, tolerance: 1 });
    expect(figureChange(known, false, { basis: 'measured' })).toEqual({ ...known, basis: 'measured' });
  });

  it('makes an own figure that counts as assumed, and goes back to the catalogue', () => {
    const id = itemId('VHF-1');
    const change = figureChange(known, false, { value: 20 });
    const after = setItemFigure(ketch, id, 'txPowerW', change);
    const own = after.items.find((item) => item.id === id)?.overrides.figures.txPowerW;
    expect(own).toEqual({ value: 20, tolerance: 5, basis: 'assumed', source: 'entered by hand' });
    expect(resetItemFigure(after, id, 'txPowerW').items).toEqual(ketch.items);
  });
});

describe('figures a part does not give', () => {
  it('are all ones an item may have, and none the part has', () => {
    const parts = CATALOGUE.filter((part) => figuresNotGiven(part).length > 0);
    expect(new Set(parts.map(({ kind }) => kind))).toEqual(new Set(['antenna', 'inline', 'power']));
    for (const part of parts) {
      for (const key of figuresNotGiven(part)) {
        expect(isFigureOf(part, key)).toBe(true);
        expect(Object.keys(part.figures)).not.toContain(key);
      }
    }
  });
});

describe('decimals of a figure', () => {
  it('are as few as show it whole, and the usual ones for lengths', () => {
    expect(decimalsOf(25, 'W', 1)).toBe(0);
    expect(decimalsOf(156.8, 'MHz', 3)).toBe(1);
    expect(decimalsOf(1621.25, 'MHz', 3)).toBe(2);
    expect(decimalsOf(1.3, 'ratio', 4)).toBe(1);
    expect(decimalsOf(1 / 3, 'ratio', 4)).toBe(4);
    expect(decimalsOf(9, 'm', 2)).toBe(2);
  });

  it('lose nothing of up to four decimals', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e7, max: 1e7 }), (tenThousandths) => {
        const value = tenThousandths / 1e4;
        expect(Number(value.toFixed(decimalsOf(value, 'dB', 2)))).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe('facts', () => {
  it('are asked for whatever the document can hold', () => {
    expect(Object.keys(ITEM_FACTS).sort()).toEqual(Object.keys(itemFactsSchema.shape).sort());
    expect(Object.keys(RUN_FACTS).sort()).toEqual(Object.keys(runFactsSchema.shape).sort());
  });

  const samples = ({ type, ...spec }: FactSpec & { words?: Readonly<Record<string, string>> }): unknown[] => {
    if (type === 'yes-no') return [true, false];
    if (type === 'choice') return Object.keys(spec.words ?? {});
    return type === 'text' ? ['BNC'] : [];
  };

  it.each(Object.entries(ITEM_FACTS))('of an item, %s, only take values the document accepts', (key, spec) => {
    const values = spec.type === 'number' ? [spec.min, spec.max] : samples(spec);
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) expect(itemFactsSchema.safeParse({ [key]: value }).success).toBe(true);
  });

  it.each(Object.entries(RUN_FACTS))('of a run, %s, only take values the document accepts', (key, spec) => {
    const values = spec.type === 'number' ? [spec.min, spec.max] : samples(spec);
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) expect(runFactsSchema.safeParse({ [key]: value }).success).toBe(true);
  });

  it('are the ones that mean something for the part', () => {
    const part = (standaloneClass: string) =>
      CATALOGUE.find((each) => each.kind === 'standalone' && each.standaloneClass === standaloneClass);
    expect(itemFactKeys(part('beacon-406'), {})).toEqual(expect.arrayContaining(['registration', 'bracket']));
    expect(itemFactKeys(part('handheld-vhf'), {})).not.toContain('registration');
    expect(itemFactKeys(part('handheld-vhf'), {})).toEqual(
      expect.arrayContaining(['charged', 'inGrabBag', 'unpluggedInStorms']),
    );
    const joint = CATALOGUE.find((each) => each.kind === 'inline' && each.deviceClass === 'joint');
    expect(itemFactKeys(joint, {})).toEqual(['wet', 'seal', 'outdoors']);
  });

  it('never hide what is recorded, even of a part nobody knows', () => {
    expect(itemFactKeys(undefined, { wet: true })).toEqual(['wet']);
    for (const item of ketch.items) {
      const part = CATALOGUE.find(({ id }) => id === item.partId);
      expect(itemFactKeys(part, item.facts)).toEqual(expect.arrayContaining(Object.keys(item.facts)));
    }
  });
});

describe('what hangs on a thing', () => {
  const assessment = assess(ketch);

  it('is told by name for a single point', () => {
    const joint = { kind: 'item', id: itemId('J1') } as const;
    expect(servicesLostWith(assessment, joint)).toContain('Voice, fixed VHF');
    expect(servicesUsing(assessment, joint)).toEqual(expect.arrayContaining(servicesLostWith(assessment, joint)));
  });

  it('is nothing for a thing that is not there', () => {
    const nowhere = { kind: 'item', id: 'nothing' } as const;
    expect(servicesLostWith(assessment, nowhere)).toEqual([]);
    expect(servicesUsing(assessment, nowhere)).toEqual([]);
    expect(findingsAbout(assessment, nowhere)).toEqual([]);
  });

  it('leaves out remarks that were overruled', () => {
    const finding = assessment.findings.find(({ subjects }) => subjects.length > 0);
    const subject = finding?.subjects[0];
    if (!finding || !subject) throw new Error('the demo boat has remarks');
    expect(findingsAbout(assessment, subject).map(({ key }) => key)).toContain(finding.key);
    const overruled = { ...ketch, findingOverrides: [{ findingKey: finding.key, reason: 'seen', by: '' }] };
    expect(findingsAbout(assess(overruled), subject).map(({ key }) => key)).not.toContain(finding.key);
  });

  it('gives the loss of a run in every path through it', () => {
    const run = ketch.runs.find(({ number }) => number === 'W01');
    const losses = lossesOfRun(assessment, run?.id ?? '');
    expect(losses.map(({ radioId }) => radioId).sort()).toEqual([itemId('AIS-1'), itemId('VHF-1')].sort());
    for (const { runDb, pathDb } of losses) expect(runDb).toBeLessThan(pathDb);
  });
});

describe('several things at once', () => {
  it('are counted by kind', () => {
    const item = { kind: 'item', id: 'a' } as const;
    expect(countWords([item, { kind: 'run', id: 'w' }, { ...item, id: 'b' }])).toBe('2 items, 1 cable run');
  });

  it('share a status or none', () => {
    const [a, b] = ketch.items;
    if (!a || !b) throw new Error('the demo boat has items');
    const mixed = {
      ...ketch,
      items: [
        { ...a, status: 'new' as const },
        { ...b, status: 'keep' as const },
      ],
    };
    const subjects = [a, b].map(({ id }) => ({ kind: 'item', id }) as const);
    expect(commonStatus(mixed, subjects)).toBeNull();
    expect(commonStatus(mixed, subjects.slice(0, 1))).toBe('new');
    expect(commonStatus(mixed, [{ kind: 'place', id: 'masthead' }])).toBeNull();
  });
});

describe('what is added to a boat', () => {
  it.each(boatKindSchema.options)('is accepted on a %s', (kind) => {
    const numbers = { loaM: 7, beamM: 2.4, draughtM: 0.5, airDraughtM: 2.5, freeboardM: 0.7 };
    let project = newProject({ name: 'Test', kind, ...numbers });
    const counts = [project.boat.masts.length, project.boat.fittings.length, project.places.length];
    project = addMast(project, newMast(project.boat));
    project = addFitting(project, newFitting(project.boat));
    project = addCompartment(project, newCompartment(project.boat));
    project = addPlace(project, newPlace(project));
    project = setBoat(project, { deckhouses: [...project.boat.deckhouses, newDeckhouse(project.boat)] });
    const { masts, fittings } = project.boat;
    expect([masts.length, fittings.length, project.places.length]).toEqual(counts.map((count) => count + 1));
    expect(projectSchema.safeParse(project).success).toBe(true);
  });

  it('gets a name of its own', () => {
    expect(freeName('Mast', [])).toBe('Mast');
    expect(freeName('Mast', [{ name: 'Mast' }, { name: 'Mast 2' }])).toBe('Mast 3');
  });
});

describe('a day', () => {
  it('is one of the calendar', () => {
    expect(['2026-05-31', '2024-02-29', '2000-02-29'].every(isIsoDate)).toBe(true);
    for (const text of ['2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '31.5.2026', '']) {
      expect(isIsoDate(text)).toBe(false);
    }
  });
});

describe('words', () => {
  it('name every measurement the document can hold', () => {
    expect(Object.keys(MEASUREMENTS).sort()).toEqual([...measurementSchema.shape.kind.options].sort());
  });
});
