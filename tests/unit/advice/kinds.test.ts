import { describe, expect, it } from 'vitest';
import { advise } from '../../../core/advice/advise.ts';
import { candidatesOf } from '../../../core/advice/candidates.ts';
import { surveyOf } from '../../../core/advice/survey.ts';
import { assess } from '../../../core/assess.ts';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { Place } from '../../../core/model/boat.ts';
import type { Feed, Item, Project } from '../../../core/model/project.ts';
import { feed, item, link, P, run, smallBoat } from '../redundancy/smallBoat.ts';
import { oneSet, onlyMast, plain, twoSets, without, withPlaces } from './boats.ts';
import { changeOf, freed, idsOf } from './support.ts';

// Each kind of change once where it frees a service of a point, worked out by hand from the drawing, and once where the
// drawing gives no ground for it.

const offered = (project: Project): readonly string[] => idsOf(advise(project));

describe('another feed', () => {
  const bank = (more: Partial<Item> = {}): Project =>
    smallBoat({
      ...oneSet,
      items: [...oneSet.items, item('BAT2', 'bank', 'bilge', { position: P(7, -0.3), ...more })],
    });

  it('from a second bank frees the set of breaker, feeds and first bank', () => {
    const project = bank();
    const id = 'second-feed:VHF:BAT2';
    expect(changeOf(advise(project), id).candidate.title).toBe('Feed VHF from BAT2 as well, past breaker BRK');
    for (const point of ['item:BRK', 'feed:F0', 'feed:F1', 'item:BAT']) {
      expect(freed(project, id, point)).toContain('voice-fixed');
    }
    // Both banks stand in one bilge, so its flood still takes both.
    expect(freed(project, id, 'cause:flood:saloon:BAT')).toEqual([]);
  });

  it('draws the new feed with a fuse of its own at the source and leaves the old one', () => {
    const project = bank();
    const after = changeOf(advise(project), 'second-feed:VHF:BAT2').candidate.apply(project);
    expect(after.feeds.slice(0, project.feeds.length)).toEqual(project.feeds);
    expect(after.feeds.slice(project.feeds.length)).toMatchObject([
      { from: { itemId: 'BAT2' }, to: { itemId: 'VHF' }, fuse: { ratingA: 10, fromSourceM: 0.15 } },
    ]);
  });

  it('says to keep two batteries apart, and to have it done by an electrician', () => {
    const { cautions } = changeOf(advise(bank()), 'second-feed:VHF:BAT2').candidate;
    expect(cautions.join(' ')).toMatch(/qualified marine electrician/);
    expect(cautions.join(' ')).toMatch(/Never join two batteries/);
  });

  it('is not offered from a bank of another voltage or one that goes', () => {
    const voltageV = { value: 24, tolerance: 0, basis: 'assumed', source: 'test' } as const;
    const other = bank({ overrides: { figures: { voltageV }, traits: {} } });
    expect(offered(other)).not.toContain('second-feed:VHF:BAT2');
    expect(offered(bank({ status: 'remove' }))).not.toContain('second-feed:VHF:BAT2');
  });

  it('from the same bank past the breaker frees it of breaker and feeds, not of the bank', () => {
    const id = 'second-feed:VHF:BAT';
    expect(freed(oneSet, id, 'item:BRK')).toContain('voice-fixed');
    expect(freed(oneSet, id, 'item:BAT')).toEqual([]);
    const straight = smallBoat({ ...oneSet, feeds: [feed('F1', 'BAT', 'VHF')] });
    expect(offered(straight)).not.toContain(id);
  });

  it('is not even tried where the set’s supply is no single point, lightning or not', () => {
    const project = smallBoat({
      ...twoSets,
      items: [...twoSets.items, item('BRK2', 'breaker', 'locker'), item('BAT2', 'bank', 'locker')],
      feeds: [
        feed('F0', 'BAT', 'BRK'),
        feed('F1', 'BRK', 'VHF'),
        feed('F3', 'BAT2', 'BRK2'),
        feed('F2', 'BRK2', 'VHF2'),
      ],
    });
    const ids = candidatesOf(surveyOf(project)).map(({ question }) => question);
    expect(ids.filter((question) => question.startsWith('supply:VHF'))).toEqual([]);
  });

  it('takes in a splitter on the way that must have supply', () => {
    const after = changeOf(advise(plain), 'second-feed:VHF:BAT').candidate.apply(plain);
    const fed = after.feeds.slice(plain.feeds.length).map(({ to }) => to.itemId);
    expect(fed).toEqual(['VHF', 'SP']);
  });
});

describe('a battery above the flood line', () => {
  it('frees the set of its bank and of the flood', () => {
    expect(freed(oneSet, 'high-battery:VHF', 'item:BAT')).toContain('voice-fixed');
    expect(freed(oneSet, 'high-battery:VHF', 'cause:flood:saloon:BAT')).toContain('voice-fixed');
    const after = changeOf(advise(oneSet), 'high-battery:VHF').candidate.apply(oneSet);
    expect(after.items.at(-1)).toMatchObject({ partId: 'bank-small-20ah', placeId: 'locker', position: { zM: 0.6 } });
  });

  it('is not offered without a dry place under cover', () => {
    const low = withPlaces((place) =>
      place.outdoors ? place : { ...place, position: { ...place.position, zM: 0.2 } },
    );
    expect(offered({ ...oneSet, places: low.places })).not.toContain('high-battery:VHF');
  });

  it('in place of the supply now helps where another set has the old one', () => {
    expect(freed(twoSets, 'own-battery:VHF', 'item:BRK')).toContain('voice-fixed');
    const after = changeOf(advise(twoSets), 'own-battery:VHF').candidate.apply(twoSets);
    expect(after.feeds.filter(({ to }) => to.itemId === 'VHF')).toHaveLength(1);
  });

  it('in place of the only supply swaps five single things for two, and says which two', () => {
    const { effect } = changeOf(advise(oneSet), 'own-battery:VHF');
    for (const point of ['item:BAT', 'item:BRK', 'feed:F0', 'feed:F1', 'cause:flood:saloon:BAT']) {
      expect(freed(oneSet, 'own-battery:VHF', point), point).toEqual(['voice-fixed', 'digital-alert']);
    }
    // Bank, breaker, two feeds and the flood go, a battery and a feed come, for voice and for the alert.
    expect(effect.after.singles - effect.before.singles).toBe(2 * (2 - 5));
    expect(effect.worsens).toEqual([
      'VF then hangs on F01 (supply to VHF), BAT-1 as well.',
      'DA then hangs on F01 (supply to VHF), BAT-1 as well.',
    ]);
  });

  it('is not offered for a set with no supply drawn', () => {
    const ids = offered(smallBoat({ ...oneSet, feeds: [] }));
    expect(ids.length).toBeGreaterThan(0);
    expect(ids.filter((id) => id.includes('battery'))).toEqual([]);
  });
});

describe('a breaker of its own', () => {
  it('frees two sets that shared one', () => {
    expect(freed(twoSets, 'own-breaker:VHF', 'item:BRK')).toContain('voice-fixed');
    expect(freed(twoSets, 'own-breaker:VHF', 'item:BAT')).toEqual([]);
  });

  it('gets a lead sized and fused for the set alone, and keeps the fuse of the set’s old one', () => {
    const project = smallBoat({
      ...twoSets,
      feeds: [
        feed('F0', 'BAT', 'BRK', { conductorId: 'conductor-35mm2', fuse: { ratingA: 40, fromSourceM: 0.1 } }),
        feed('F1', 'BRK', 'VHF', { fuse: { ratingA: 7, fromSourceM: 0.1 } }),
        feed('F2', 'BRK', 'VHF2'),
      ],
    });
    const after = changeOf(advise(project), 'own-breaker:VHF').candidate.apply(project);
    // 5.5 A over 3 m and back: 1.5 mm² drops 0.4 V, more than four fifths of 3 % of 12 V; 2.5 mm² drops 0.23 V, and 10 A is
    // the next fuse over 1.25 times 5.5 A.
    const [lead, last] = after.feeds.slice(-2);
    expect(lead).toMatchObject({ from: { itemId: 'BAT' }, lengthM: 3, fuse: { ratingA: 10, fromSourceM: 0.15 } });
    expect(indexProject(project).parts.get(lead?.conductorId ?? '')).toMatchObject({
      figures: { areaMm2: { value: 2.5 } },
    });
    expect(last).toMatchObject({ to: { itemId: 'VHF' }, fuse: { ratingA: 7, fromSourceM: 0.1 } });
  });

  it('draws no lead without a fuse near its source, where the lead there has none; nor does any other change', () => {
    for (const candidate of candidatesOf(surveyOf(twoSets))) {
      const fresh = assess(candidate.apply(twoSets)).feeds.filter(
        ({ feedId }) => !twoSets.feeds.some(({ id }) => id === feedId),
      );
      const verdicts = fresh.map(({ protection }) => protection.verdict);
      expect(verdicts, candidate.id).not.toContain('too-far');
      expect(verdicts, candidate.id).not.toContain('missing');
    }
  });

  it('is not offered for a breaker with one load', () => {
    expect(offered(oneSet)).not.toContain('own-breaker:VHF');
  });
});

describe('a battery moved up', () => {
  const on = (partId: string): Project =>
    smallBoat({
      ...oneSet,
      items: oneSet.items.map((each) => (each.id === 'BAT' ? item('BAT', partId, 'bilge') : each)),
    });

  it('frees of the flood what hangs on a battery one can carry', () => {
    const project = on('battery-starter-75ah');
    expect(freed(project, 'battery-up:BAT', 'cause:flood:saloon:BAT')).toContain('voice-fixed');
    const after = changeOf(advise(project), 'battery-up:BAT').candidate.apply(project);
    expect(after.items.find(({ id }) => id === 'BAT')?.placeId).toBe('locker');
    // From the locker (8, 0, 0.6) to the breaker at the hut (6, 0, 1): 2 + 0.4 m, to the next half metre no less than the 3 m there were.
    expect(after.feeds.find(({ id }) => id === 'F0')?.lengthM).toBe(3);
  });

  /** The boat on a starter battery, with this lead from it to the breaker. */
  const withLead = (more: Partial<Feed>): Project =>
    smallBoat({ ...on('battery-starter-75ah'), feeds: [feed('F0', 'BAT', 'BRK', more), feed('F1', 'BRK', 'VHF')] });

  it('lists the move and the lead that has to be made anew', () => {
    const { material } = changeOf(advise(withLead({ lengthM: 1, conductorId: 'conductor-6mm2' })), 'battery-up:BAT');
    const plainWords = material.adds.map((words) =>
      words.map((each) => (typeof each === 'string' ? each : each.value)),
    );
    // The 2.4 m of above, to the next half metre.
    expect(plainWords.map((words) => words.join(''))).toEqual([
      'BAT moved to the locker',
      'F0 made anew, pair of 6, 2.5 in place of 1',
    ]);
  });

  it('is not offered where the longer lead would drop too much', () => {
    // 3 % of 12.6 V is 0.378 V. At 5.5 A the 3 m of 2.5 mm² to the set drop 0.231 V, and 2.5 m to the breaker of 2.5 mm²
    // 0.193 V more, where 1 m dropped 0.077 V; of 6 mm² they drop some 0.08 V. The set rests at 0.5 A, and nothing else is fed.
    expect(offered(withLead({ lengthM: 1, conductorId: 'conductor-6mm2' }))).toContain('battery-up:BAT');
    expect(offered(withLead({ lengthM: 1, conductorId: 'conductor-2-5mm2' }))).not.toContain('battery-up:BAT');
  });

  it('is not offered for a house bank', () => {
    expect(offered(on('bank-lead-acid-220ah'))).not.toContain('battery-up:BAT');
  });
});

describe('an antenna on another structure', () => {
  it('of its own for the AIS takes the splitter out and frees voice of it', () => {
    const id = 'own-antenna:AIS';
    expect(freed(plain, id, 'item:SP')).toContain('voice-fixed');
    expect(freed(plain, id, 'item:A1')).toEqual(['ais-transmit', 'ais-receive']);
    const after = changeOf(advise(plain), id).candidate.apply(plain);
    expect(after.items.some((each) => each.id === 'SP')).toBe(false);
    expect(after.items.at(-1)).toMatchObject({ partId: 'antenna-ais-whip-3db', placeId: 'arch' });
    // Beside the receiver that stands there: down the arch to its base at 1 m, then straight forward to the set.
    const added = after.runs.at(-1);
    expect(added?.via.map(({ position }) => position)).toEqual([P(11.25, 1)]);
    expect(added?.slackM).toBe(0.5);
  });

  it('goes to no higher place on the same mast', () => {
    const masthead = plain.places.find(({ id }) => id === 'masthead');
    const spreader = masthead && { ...masthead, id: 'spreader', name: 'Spreader', position: P(5, 10) };
    const project = smallBoat({ places: [...plain.places, ...(spreader ? [spreader] : [])] });
    expect(changeOf(advise(project), 'own-antenna:AIS').candidate.title).toMatch(/at the arch/);
  });

  it('is for the AIS to get where voice and AIS share: voice keeps the high one', () => {
    expect(offered(plain)).not.toContain('own-antenna:VHF');
  });

  it('is not offered where no free place stands off the mast', () => {
    expect(offered(onlyMast)).not.toContain('own-antenna:AIS');
  });

  it('behind a changeover switch frees a set of antenna and mast, and says what the switch brings', () => {
    const id = 'second-antenna:VHF';
    expect(freed(oneSet, id, 'item:A1')).toContain('voice-fixed');
    expect(freed(oneSet, id, 'structure:main')).toContain('voice-fixed');
    const { effect, candidate } = changeOf(advise(oneSet), id);
    expect(effect.worsens.join(' ')).toMatch(/VF then hangs on .*SW-1/);
    expect(candidate.cautions.join(' ')).toMatch(/set it over/);
    expect(offered(twoSets)).not.toContain(id);
  });
});

describe('a bypass kept for the day', () => {
  const ownWhips = (place: 'arch' | 'masthead'): Project =>
    smallBoat({
      items: [...without('SP'), item('A2', 'whip', place)],
      runs: [run('W1', 'VHF.ant', 'A1.rf'), run('W2', 'AIS.ant', 'A2.rf')],
      feeds: [feed('F0', 'BAT', 'BRK'), feed('F1', 'BRK', 'VHF'), feed('F2', 'BRK', 'AIS')],
    });

  it('lets a voice set borrow the antenna of the AIS on another structure', () => {
    expect(freed(ownWhips('arch'), 'jumper:VHF:AIS', 'structure:main')).toContain('voice-fixed');
    expect(offered(ownWhips('masthead'))).not.toContain('jumper:VHF:AIS');
  });

  it('round a splitter helps where its supply is another than the set’s', () => {
    const project = smallBoat({
      items: [...plain.items, item('BRK2', 'breaker', 'hut'), item('BAT2', 'bank', 'locker')],
      feeds: [...plain.feeds.filter(({ id }) => id !== 'F3'), feed('F4', 'BAT2', 'BRK2'), feed('F3', 'BRK2', 'SP')],
    });
    expect(freed(project, 'jumper:VHF:SP', 'item:SP')).toContain('voice-fixed');
    expect(freed(project, 'jumper:VHF:SP', 'item:BRK2')).toContain('voice-fixed');
    // On the set's own supply it frees of splitter and feed and brings two switches and a lead: a bad bargain, not offered.
    expect(offered(plain)).not.toContain('jumper:VHF:SP');
  });
});

describe('a splitter of another kind', () => {
  it('frees voice of the splitter’s own feed', () => {
    expect(freed(plain, 'splitter-kind:SP', 'feed:F3')).toContain('voice-fixed');
    expect(freed(plain, 'splitter-kind:SP', 'item:SP')).toEqual([]);
  });

  it('is not offered for one that passes without supply', () => {
    const items = plain.items.map((each) => (each.id === 'SP' ? item('SP', 'splitter-through', 'hut') : each));
    expect(offered(smallBoat({ items }))).not.toContain('splitter-kind:SP');
  });
});

describe('a position', () => {
  it('is led to a set without one from the bus that has it', () => {
    const project = smallBoat({ dataLinks: [link('D1', 'GPS', 'BUS')] });
    const { effect, candidate } = changeOf(advise(project), 'position-link:VHF:BUS');
    expect(candidate.title).toBe('Lead position from BUS to VHF');
    expect(effect.cellsBetter + effect.clears.length).toBeGreaterThan(0);
  });

  it('is not led twice from one source, nor from nowhere', () => {
    expect(offered(plain)).not.toContain('position-link:VHF:GPS');
    const none = smallBoat({
      items: without('GPS', 'AIS'),
      runs: plain.runs.filter(({ id }) => id !== 'W2'),
      feeds: plain.feeds.filter(({ id }) => id !== 'F2'),
      dataLinks: [],
    });
    expect(offered(none).filter((id) => id.startsWith('position-link'))).toEqual([]);
  });
});

describe('open sky', () => {
  const under = (overhead: Place['overhead']): Project =>
    withPlaces((place) => (place.id === 'hut' ? { ...place, overhead } : place));

  it('gives an AIS under metal a GNSS antenna outside, and with it a way to be seen', () => {
    const project = under('metal');
    expect(freed(project, 'open-sky:AIS', 'lost:ais-transmit')).toEqual(['ais-transmit']);
    expect(offered(under('grp'))).not.toContain('open-sky:AIS');
  });

  it('moves an antenna out from under metal and its record with it', () => {
    const project = smallBoat({
      items: [
        ...plain.items,
        item('SAT', 'terminal', 'locker'),
        item('A9', 'patch', null, { position: P(8, 1), facts: { overhead: 'metal', outdoors: false } }),
      ],
      runs: [...plain.runs, run('W9', 'A9.rf', 'SAT.ant', { measuredLengthM: 1 })],
    });
    expect(freed(project, 'open-sky:A9', 'lost:long-range')).toEqual(['long-range']);
    const after = changeOf(advise(project), 'open-sky:A9').candidate.apply(project);
    const moved = after.items.find(({ id }) => id === 'A9');
    expect(moved).toMatchObject({ placeId: 'arch', facts: {} });
    // From the locker (8, 0, 0.6) to the arch (11, 0, 4): 3 + 3.4 m, to the next half metre.
    expect(after.runs.find(({ id }) => id === 'W9')?.measuredLengthM).toBe(6.5);
  });
});

describe('an emergency antenna', () => {
  const cockpit: Place = {
    id: 'cockpit',
    name: 'Cockpit',
    position: P(9, 1.5),
    structureId: null,
    compartmentId: null,
    outdoors: true,
    overhead: 'open',
  };
  const places = [...plain.places, cockpit];

  it('is rigged on deck, with a lead that reaches and the plug of the set', () => {
    const project = smallBoat({ places });
    const id = 'emergency-antenna:new';
    expect(freed(project, id, 'item:A1')).toContain('voice-fixed');
    const after = changeOf(advise(project), id).candidate.apply(project);
    // Straight from (9, 0, 1.5) to the set at (6, 0, 1) is 3.04 m; 15 % more is 3.5 m, so 4 m.
    expect(after.items.at(-1)?.facts).toEqual({ leadLengthM: 4, leadConnector: 'PL-259' });
  });

  it('names three sets as people do', () => {
    const more = ['VHF2', 'VHF3'].map((id) => item(id, 'vhf', 'hut'));
    const project = smallBoat({ places, items: [...plain.items, ...more] });
    const titles = candidatesOf(surveyOf(project)).map(({ title }) => title);
    expect(titles).toContainEqual(expect.stringMatching(/plug for VHF, VHF2 and VHF3$/));
  });

  it('that is aboard gets the lead it lacks', () => {
    const facts = { leadLengthM: 2, leadConnector: 'BNC' };
    const project = smallBoat({
      places,
      items: [...plain.items, item('EM', 'emergency', 'cockpit', { position: P(9, 1.5), facts })],
    });
    expect(freed(project, 'emergency-antenna:EM', 'item:A1')).toContain('voice-fixed');
  });

  it('is not offered where one fits already, nor where there is no deck to rig it on', () => {
    const facts = { leadLengthM: 4, leadConnector: 'PL-259' };
    const fits = smallBoat({
      places,
      items: [...plain.items, item('EM', 'emergency', 'cockpit', { position: P(9, 1.5), facts })],
    });
    expect(offered(fits).filter((id) => id.startsWith('emergency'))).toEqual([]);
    expect(offered(onlyMast).filter((id) => id.startsWith('emergency'))).toEqual([]);
  });
});

describe('a spare in the grab bag', () => {
  it('frees a service that hangs on one carried set', () => {
    expect(freed(plain, 'spare:handheld-vhf-dsc-5w', 'item:HH')).toEqual(['voice-handheld']);
    expect(freed(plain, 'spare:beacon-406-manual', 'item:EPIRB')).toEqual(['beacon']);
  });

  it('is not offered where there are two', () => {
    const project = smallBoat({
      items: [...plain.items, item('HH2', 'handheld', null), item('EPIRB2', 'beacon', null)],
    });
    expect(offered(project).filter((id) => /handheld-vhf|beacon/.test(id))).toEqual([]);
  });
});
