import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { setItem } from '../../../core/edit/items.ts';
import { addOwnEvent, setEventExcluded } from '../../../core/edit/redundancy.ts';
import type { Item, Project, Station } from '../../../core/model/project.ts';
import type { ServiceId } from '../../../core/model/services.ts';
import { RIGGED_ABOVE_DECK_M, riggedEmergency } from '../../../core/redundancy/emergencyPath.ts';
import { failureView } from '../../../core/redundancy/failureView.ts';
import { IN_THE_RAFT_M, type MeansLeft, meansFinder } from '../../../core/redundancy/meansLeft.ts';
import { raftList } from '../../../core/redundancy/raft.ts';
import { studyFailures } from '../../../core/redundancy/study.ts';
import type { MatrixRow } from '../../../core/redundancy/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}
const tagged = (project: Project, tag: string): Item => {
  const item = project.items.find((each) => each.tag === tag);
  if (!item) throw new Error(`No ${tag}`);
  return item;
};
const rowOf = (project: Project, kind: MatrixRow['event']['kind']): MatrixRow => {
  const row = assess(project).redundancy.matrix.find(({ event }) => event.kind === kind);
  if (!row) throw new Error(`No ${kind}`);
  return row;
};
const ship = (project: Project): Station | undefined => project.stations.find(({ kind }) => kind === 'ship');
function meansIn(project: Project, row: MatrixRow, serviceId: ServiceId): readonly MeansLeft[] {
  return meansFinder(project, assess(project), ship(project))(row).get(serviceId) ?? [];
}

describe('what is left, and how far', () => {
  const project = demo('vessarine');

  it('a path reaches as far as on the Range page while both ways must work', () => {
    const [best] = meansIn(project, rowOf(project, 'none'), 'voice-fixed');
    const range = assess(project).ranges.find(
      ({ pathId, stationId }) => pathId === best?.way.pathId && stationId === ship(project)?.id,
    );
    expect(best?.reach?.typical).toEqual(range?.typical);
    expect(best?.reach?.dependable).toEqual(range?.dependable);
  });

  it('one way alone reaches at least as far as both', () => {
    const row = rowOf(project, 'none');
    const voice = meansIn(project, row, 'voice-fixed')[0]?.reach?.typical.nominalKm ?? Number.NaN;
    for (const serviceId of ['digital-alert', 'safety-information'] as const) {
      const alone = meansIn(project, row, serviceId).find(({ way }) => way.label.startsWith('VHF-1'));
      expect(alone?.reach?.typical.nominalKm).toBeGreaterThanOrEqual(voice - 1e-9);
    }
  });

  it('without the mast the low antenna aft is what is left, and reaches less far', () => {
    const whole = meansIn(project, rowOf(project, 'none'), 'voice-fixed')[0];
    const [left, ...none] = meansIn(project, rowOf(project, 'mast'), 'voice-fixed');
    expect(none).toEqual([]);
    expect(left?.way.label).toBe('VHF-2 on A2');
    expect(left?.reach?.dependable.nominalKm).toBeLessThan(whole?.reach?.dependable.nominalKm ?? 0);
  });

  it('a handheld is held lower in the raft, and reaches no farther than from the deck', () => {
    const handheld = tagged(project, 'VHF-3');
    const onDeck: Project = {
      ...project,
      items: project.items.map((each) =>
        each === handheld ? { ...each, placeId: null, position: { ...each.position, zM: 3 } } : each,
      ),
    };
    const [deck] = meansIn(onDeck, rowOf(onDeck, 'none'), 'voice-handheld');
    const [raft] = meansIn(onDeck, rowOf(onDeck, 'abandon'), 'voice-handheld');
    expect(deck?.reach?.ownHeightM).toBe(3);
    expect(raft?.reach?.ownHeightM).toBe(IN_THE_RAFT_M);
    expect(raft?.reach?.dependable.nominalKm).toBeLessThan(deck?.reach?.dependable.nominalKm ?? 0);
    expect(formatText(raft?.note ?? [], METRIC_PREFERENCES)).toBe('Held by hand in the raft, 1.0 m above the water.');
  });

  it('says in words what has no distance: satellites, the beacon, the ground wave', () => {
    const brannoch = demo('brannoch-tern');
    const row = rowOf(brannoch, 'none');
    const notes = meansIn(brannoch, row, 'long-range').map(({ note }) => formatText(note, METRIC_PREFERENCES));
    expect(notes.some((note) => /^Ground wave on \d+ MHz by day to a boat with the same set/.test(note))).toBe(true);
    expect(notes).toContain('By satellite, wherever its sky is clear.');
    const [beacon] = meansIn(brannoch, row, 'beacon');
    expect(formatText(beacon?.note ?? [], METRIC_PREFERENCES)).toMatch(/^By satellite, anywhere/);
  });

  it('never says of a VHF alert that it goes by satellite, whatever the far end', () => {
    for (const stations of [[], project.stations.filter(({ kind }) => kind === 'mobile-mast')]) {
      const boat: Project = { ...project, stations };
      const means = meansFinder(boat, assess(boat), boat.stations[0])(rowOf(boat, 'none')).get('digital-alert') ?? [];
      expect(means.length).toBeGreaterThan(0);
      for (const { note } of means) expect(note).toEqual([]);
    }
  });

  it('nothing is left of what is lost', () => {
    for (const row of assess(project).redundancy.matrix) {
      const means = meansFinder(project, assess(project), ship(project))(row);
      for (const { serviceId, grade } of row.states) {
        expect((means.get(serviceId) ?? []).length > 0, `${row.event.id} ${serviceId}`).toBe(grade !== 'lost');
      }
    }
  });
});

describe('an emergency antenna', () => {
  /** The lead made good: long enough, with the plug of the set (scenario: EM-1 lead 9 m with the right plug). */
  const mended = (() => {
    const project = demo('vessarine');
    return setItem(project, tagged(project, 'EM-1').id, { facts: { leadLengthM: 9, leadConnector: 'PL-259' } });
  })();

  it('stands at the deck aft, on its own lead', () => {
    const rigged = riggedEmergency(mended, tagged(mended, 'EM-1').id, tagged(mended, 'VHF-1').id);
    const { freeboardAftM } = mended.boat;
    // Feed point half way up its half metre.
    expect(rigged?.path.antennaHeightM).toBeCloseTo(freeboardAftM + RIGGED_ABOVE_DECK_M + 0.25, 9);
    // 9 m of RG-58 at 156.8 MHz: 21 dB/100 m by the tables the catalogue's cable is fitted to, within their 10 %.
    const cable = rigged?.path.elements.find(({ kind }) => kind === 'cable');
    expect(cable?.lossDb).toBeGreaterThan(1.89 * 0.9);
    expect(cable?.lossDb).toBeLessThan(1.89 * 1.1);
  });

  it('is a way for fixed voice when the arch and the mast are gone, with a reach of its own', () => {
    const masts = mended.boat.masts.map(({ id }) => ({ kind: 'structure' as const, id }));
    const arch = mended.boat.fittings.filter(({ kind }) => kind === 'arch');
    const hits = [...masts, ...arch.map(({ id }) => ({ kind: 'structure' as const, id }))];
    const bare = addOwnEvent(mended, { label: 'All aloft gone', hits, note: '' });
    const means = meansIn(bare, rowOf(bare, 'own'), 'voice-fixed');
    expect(means.length).toBeGreaterThan(0);
    const best = means[0];
    expect(best?.way.emergencyAntennaId).toBe(tagged(mended, 'EM-1').id);
    expect(best?.reach?.dependable.nominalKm).toBeGreaterThan(1);
    const fixed = meansIn(bare, rowOf(bare, 'none'), 'voice-fixed')[0];
    expect(best?.reach?.dependable.nominalKm).toBeLessThan(fixed?.reach?.dependable.nominalKm ?? 0);
  });

  it('as found has a lead too short and the wrong plug, and is no way', () => {
    const asFound = demo('vessarine');
    expect(assess(asFound).redundancy.ways.some(({ emergencyAntennaId }) => emergencyAntennaId !== undefined)).toBe(
      false,
    );
  });
});

describe('events of the user’s own', () => {
  const project = demo('vessarine');

  it('take down what they name, and what stands on it', () => {
    const arch = project.boat.fittings.find(({ kind }) => kind === 'arch');
    const known = assess(project).redundancy.matrix.find(({ event }) => event.kind === 'structure');
    const own = addOwnEvent(project, {
      label: 'Arch carried away',
      hits: [{ kind: 'structure', id: arch?.id ?? '' }],
      note: '',
    });
    expect(rowOf(own, 'own').states.map(({ grade }) => grade)).toEqual(known?.states.map(({ grade }) => grade));
  });

  it('a place takes what is at it, whether or not a service hangs on it, and the drawing shows it', () => {
    const place = project.places.find(({ id }) => project.items.some(({ placeId }) => placeId === id));
    const own = addOwnEvent(project, {
      label: 'Place gone',
      hits: [{ kind: 'place', id: place?.id ?? '' }],
      note: '',
    });
    const row = rowOf(own, 'own');
    const at = own.items.filter(({ placeId }) => placeId === place?.id).map(({ id }) => `item:${id}`);
    expect(row.event.downIds).toEqual(at);
    const { lost } = failureView(own, assess(own).redundancy, row.event.id);
    for (const key of at) expect(lost.has(key)).toBe(true);
  });

  it('are common causes in the trees, and single points where they alone take a service', () => {
    const own = addOwnEvent(project, {
      label: 'Locker drowned',
      hits: ['VHF-1', 'VHF-2'].map((tag) => ({ kind: 'item' as const, id: tagged(project, tag).id })),
      note: '',
    });
    const study = studyFailures(own, assess(own).paths);
    const voice = study.cuts.find(({ serviceId }) => serviceId === 'voice-fixed');
    expect(voice?.singles).toContain('cause:own:event-1');
    expect(study.labels.get('cause:own:event-1')?.label).toBe('Locker drowned');
  });

  it('of another layout’s things stay, take nothing down, and say so', () => {
    const own = addOwnEvent(project, { label: 'Elsewhere', hits: [{ kind: 'item', id: 'not-here' }], note: '' });
    const { event, states } = rowOf(own, 'own');
    expect(event.note).toBe('This layout has nothing of what it hits.');
    expect(states).toEqual(rowOf(own, 'none').states);
  });
});

describe('events left out', () => {
  const project = demo('vessarine');

  it('are neither tried nor causes, and are named', () => {
    const flood = rowOf(project, 'flood').event;
    const without = setEventExcluded(project, flood.id, true);
    const { matrix, excluded } = assess(without).redundancy;
    expect(matrix.some(({ event }) => event.id === flood.id)).toBe(false);
    expect(excluded.map(({ id }) => id)).toEqual([flood.id]);
    const { model } = studyFailures(without, assess(without).paths);
    expect(model.causes.some(({ id }) => id === `cause:${flood.id}`)).toBe(false);
    expect(setEventExcluded(without, flood.id, false).settings.redundancy.excludedEventIds).toEqual([]);
  });

  it('never leaves out that nothing has failed', () => {
    const { matrix } = assess(setEventExcluded(project, 'none', true)).redundancy;
    expect(matrix[0]?.event.kind).toBe('none');
  });
});

describe('a flood', () => {
  it('drowns everything below it on its side, spare batteries too, and is drawn', () => {
    const project = demo('brannoch-tern');
    const { event } = rowOf(project, 'flood');
    // The starter battery feeds no radio; it is in the same bilge.
    expect(event.downIds).toContain(`item:${tagged(project, 'B2').id}`);
    const { water } = failureView(project, assess(project).redundancy, event.id);
    expect(water?.levelZM).toBe(-0.3);
    expect(water?.spans.length).toBeGreaterThan(0);
  });
});

describe('the raft', () => {
  it('lists what goes along by how it comes, with what it is good for and what is wrong with it', () => {
    const project = demo('vessarine');
    const list = raftList(project, assess(project).redundancy);
    const tagOf = (id: string): string => project.items.find((each) => each.id === id)?.tag ?? '';
    expect(list?.goes.map(({ itemId, taken }) => [tagOf(itemId), taken])).toEqual([
      ['VHF-3', 'grab-bag'],
      ['SAT-2', 'grab-bag'],
      ['BC-1', 'floats-free'],
    ]);
    expect(list?.goes.find(({ itemId }) => tagOf(itemId) === 'BC-1')?.doubts).toEqual(['registered to another owner']);
    expect(list?.lost).toEqual(['voice-fixed', 'ais-receive', 'internet-near-shore']);
  });

  it('is null where the event is left out', () => {
    const project = setEventExcluded(demo('vessarine'), 'abandon', true);
    expect(raftList(project, assess(project).redundancy)).toBeNull();
  });
});
