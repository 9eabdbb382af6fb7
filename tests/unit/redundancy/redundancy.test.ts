import { describe, expect, it } from 'vitest';
import { singlePoints } from '../../../core/faultTree/scenarios.ts';
import { budgetPaths } from '../../../core/links/budget.ts';
import type { Project } from '../../../core/model/project.ts';
import type { ServiceId } from '../../../core/model/services.ts';
import { failureView } from '../../../core/redundancy/failureView.ts';
import { buildModel, serviceTree } from '../../../core/redundancy/model.ts';
import { assessRedundancy } from '../../../core/redundancy/redundancy.ts';
import type { Redundancy } from '../../../core/redundancy/types.ts';
import { feed, item, link, run, smallBoat } from './smallBoat.ts';

const assessed = (project: Project): Redundancy =>
  assessRedundancy(project, { paths: budgetPaths(project), ranges: [] });

function state(redundancy: Redundancy, eventId: string, serviceId: ServiceId) {
  const row = redundancy.matrix.find((each) => each.event.id === eventId);
  const found = row?.states.find((each) => each.serviceId === serviceId);
  if (!found) throw new Error(`No ${serviceId} in ${eventId}`);
  return found;
}

const grade = (redundancy: Redundancy, eventId: string, serviceId: ServiceId) =>
  state(redundancy, eventId, serviceId).grade;

function pointsFor(redundancy: Redundancy, serviceId: ServiceId): string[] {
  return redundancy.singlePoints
    .filter((each) => each.serviceIds.includes(serviceId))
    .map((each) => each.componentId)
    .sort();
}

/** A second VHF on the arch with a bank, feed and position of its own. */
function withSecondSet(): Project {
  const boat = smallBoat();
  return smallBoat({
    items: [...boat.items, item('VHF2', 'vhf', 'hut'), item('A2', 'whip', 'arch'), item('BAT2', 'bank', 'locker')],
    runs: [...boat.runs, run('W4', 'VHF2.ant', 'A2.rf')],
    feeds: [...boat.feeds, feed('F4', 'BAT2', 'VHF2')],
  });
}

describe('what a service hangs on', () => {
  it('names every single thing on the way of the only set, once each', () => {
    expect(pointsFor(assessed(smallBoat()), 'voice-fixed')).toEqual([
      'feed:F0',
      'feed:F1',
      'feed:F3',
      'item:A1',
      'item:BAT',
      'item:BRK',
      'item:SP',
      'item:VHF',
      'run:W1',
      'run:W3',
      'structure:main',
    ]);
  });

  it('leaves a splitter’s supply out where it lets the signal through without', () => {
    const boat = smallBoat();
    const items = boat.items.map((each) => (each.id === 'SP' ? { ...each, partId: 'splitter-through' } : each));
    const through = pointsFor(assessed(smallBoat({ items })), 'voice-fixed');
    expect(through).toContain('item:SP');
    expect(through).not.toContain('feed:F3');
  });

  it('agrees with the fault tree it is read from, service by service', () => {
    const project = withSecondSet();
    const model = buildModel(project, budgetPaths(project));
    const redundancy = assessed(project);
    for (const serviceId of redundancy.services) {
      expect(pointsFor(redundancy, serviceId)).toEqual([...singlePoints(serviceTree(model, serviceId)).ids]);
    }
  });

  it('has no single point left once a second set shares nothing', () => {
    expect(pointsFor(assessed(withSecondSet()), 'voice-fixed')).toEqual([]);
  });

  it('takes two feeds into one set as alternatives', () => {
    const boat = smallBoat();
    const items = [...boat.items, item('BAT2', 'bank', 'locker')].map((each) =>
      each.id === 'SP' ? { ...each, partId: 'splitter-through' } : each,
    );
    const redundancy = assessed(smallBoat({ items, feeds: [...boat.feeds, feed('F9', 'BAT2', 'VHF')] }));
    expect(pointsFor(redundancy, 'voice-fixed')).toEqual([
      'item:A1',
      'item:SP',
      'item:VHF',
      'run:W1',
      'run:W3',
      'structure:main',
    ]);
    expect(grade(redundancy, 'bank:BAT', 'voice-fixed')).toBe('full');
  });

  it('gives no help from panels that only feed each other', () => {
    const boat = smallBoat();
    const items = [...boat.items, item('PA', 'panel', 'hut'), item('PB', 'panel', 'hut')];
    const feeds = [feed('X1', 'PA', 'PB'), feed('X2', 'PB', 'PA'), feed('X3', 'PA', 'VHF')];
    expect(grade(assessed(smallBoat({ items, feeds })), 'none', 'voice-fixed')).toBe('lost');
  });

  it('does not count what is to be removed', () => {
    const boat = withSecondSet();
    const items = boat.items.map((each) => (each.id === 'A2' ? { ...each, status: 'remove' as const } : each));
    expect(assessed({ ...boat, items }).ways.filter((way) => way.serviceId === 'voice-fixed')).toHaveLength(1);
  });

  it('does not depend on the order of the document', () => {
    const boat = withSecondSet();
    const turned: Project = {
      ...boat,
      items: [...boat.items].reverse(),
      runs: [...boat.runs].reverse(),
      feeds: [...boat.feeds].reverse(),
      dataLinks: [...boat.dataLinks].reverse(),
    };
    const letters = (redundancy: Redundancy) =>
      Object.fromEntries(
        redundancy.matrix.map(({ event, states }) => [event.id, states.map((each) => each.grade).join()]),
      );
    expect(letters(assessed(turned))).toEqual(letters(assessed(boat)));
    const byId = (redundancy: Redundancy) =>
      redundancy.singlePoints.map((each) => `${each.componentId}: ${each.serviceIds}`).sort();
    expect(byId(assessed(turned))).toEqual(byId(assessed(boat)));
  });
});

describe('one step after another', () => {
  const boat = smallBoat();

  it('gives the same object back where only a position changed', () => {
    const before = assessed(boat);
    const items = boat.items.map((each) =>
      each.id === 'VHF' ? { ...each, position: { ...each.position, xM: 6.1 } } : each,
    );
    expect(assessed({ ...boat, items })).toBe(before);
  });

  it('sees a change of facts, of a run and of what stands on what', () => {
    const before = assessed(boat);
    const changed: Project[] = [
      { ...boat, items: boat.items.map((each) => (each.id === 'HH' ? { ...each, facts: { charged: false } } : each)) },
      { ...boat, runs: boat.runs.map((each) => (each.id === 'W3' ? { ...each, measuredLengthM: 60 } : each)) },
      { ...boat, items: boat.items.map((each) => (each.id === 'A1' ? { ...each, placeId: 'arch' } : each)) },
      { ...boat, feeds: boat.feeds.slice(1) },
    ];
    for (const project of changed) {
      const fresh = structuredClone(project);
      expect(assessed(project)).not.toEqual(before);
      expect(assessed(project)).toEqual(assessed(fresh));
    }
    expect(assessed(boat)).toEqual(before);
  });
});

describe('grades', () => {
  it('calls voice full within the feeder limit and reduced beyond it', () => {
    const boat = smallBoat();
    expect(grade(assessed(boat), 'none', 'voice-fixed')).toBe('full');
    const runs = boat.runs.map((each) => (each.id === 'W3' ? { ...each, measuredLengthM: 60 } : each));
    const long = assessed({ ...boat, runs });
    expect(state(long, 'none', 'voice-fixed')).toMatchObject({
      grade: 'reduced',
      reason: expect.stringMatching(/feeder takes \d+ %/),
    });
    expect(grade(long, 'none', 'safety-information')).toBe('full');
  });

  it('calls a low antenna reduced for voice and for safety information', () => {
    const lost = assessed(withSecondSet());
    expect(state(lost, 'mast:main', 'voice-fixed').reason).toMatch(/less than half as high/);
    expect(grade(lost, 'mast:main', 'safety-information')).toBe('reduced');
  });

  it('keeps the alert when the position is gone, reduced, and says why', () => {
    const boat = smallBoat();
    const redundancy = assessed(boat);
    expect(grade(redundancy, 'none', 'digital-alert')).toBe('full');
    for (const event of ['position-source:GPS', 'data-bus:BUS', 'structure:arch']) {
      expect(state(redundancy, event, 'digital-alert').reason).toMatch(/carries no position/);
    }
    const without = assessed({ ...boat, dataLinks: [] });
    expect(state(without, 'none', 'digital-alert').reason).toMatch(/no position source is connected to VHF/);
  });

  it('does not let AIS transmit without a sky over its receiver', () => {
    const boat = smallBoat();
    const under = boat.items.map((each) =>
      each.id === 'AIS' ? { ...each, facts: { overhead: 'carbon' as const } } : each,
    );
    const redundancy = assessed({ ...boat, items: under });
    expect(state(redundancy, 'none', 'ais-transmit')).toMatchObject({
      grade: 'lost',
      reason: expect.stringMatching(/carbon.*does not transmit/),
    });
    expect(grade(redundancy, 'none', 'ais-receive')).toBe('full');
    const items = [...under, item('G', 'gnss-antenna', 'arch')];
    const mended = assessed({ ...boat, items, runs: [...boat.runs, run('W9', 'AIS.gnss', 'G.rf')] });
    expect(grade(mended, 'none', 'ais-transmit')).toBe('full');
    expect(grade(mended, 'structure:arch', 'ais-transmit')).toBe('lost');
  });

  it('says who has no part in a service at all', () => {
    expect(state(assessed(smallBoat()), 'none', 'long-range')).toMatchObject({
      grade: 'lost',
      reason: 'Nothing aboard is made for it.',
    });
  });

  it('counts an emergency antenna only if its lead reaches and its plug fits', () => {
    const boat = smallBoat();
    const withAntenna = (leadLengthM: number, leadConnector: string) =>
      assessed({
        ...boat,
        items: [...boat.items, item('EM', 'emergency', 'locker', { facts: { leadLengthM, leadConnector } })],
      });
    expect(grade(withAntenna(5, 'PL-259'), 'mast:main', 'voice-fixed')).toBe('reduced');
    expect(grade(withAntenna(1, 'PL-259'), 'mast:main', 'voice-fixed')).toBe('lost');
    expect(grade(withAntenna(5, 'BNC'), 'mast:main', 'voice-fixed')).toBe('lost');
  });
});

describe('an antenna two sets can use', () => {
  /** VHF on the masthead through one switch; AIS on the arch through another; the two joined for the day the mast is lost. */
  const boat = smallBoat();
  const shared = {
    ...boat,
    items: [
      ...boat.items.filter((each) => each.id !== 'SP'),
      item('S1', 'switch', 'hut'),
      item('S2', 'switch', 'hut'),
      item('A2', 'whip', 'arch'),
    ],
    runs: [
      run('W1', 'VHF.ant', 'S1.set'),
      run('W2', 'S1.a', 'A1.rf'),
      run('W3', 'S1.b', 'S2.b', { measuredLengthM: 1 }),
      run('W4', 'S2.set', 'A2.rf'),
      run('W5', 'S2.a', 'AIS.ant'),
    ],
  };
  const redundancy = assessed(shared);

  it('serves AIS alone while voice has its own', () => {
    for (const service of ['voice-fixed', 'ais-receive', 'ais-transmit'] as const) {
      expect(grade(redundancy, 'none', service)).toBe('full');
    }
  });

  it('goes to voice by hand when that is all that is left, and AIS makes do', () => {
    expect(state(redundancy, 'mast:main', 'voice-fixed').reason).toMatch(/S1 and S2 must be set over by hand first/);
    expect(state(redundancy, 'mast:main', 'ais-receive').reason).toMatch(/switched over to voice/);
    expect(grade(redundancy, 'structure:arch', 'voice-fixed')).toBe('full');
  });

  it('stays with AIS when the VHF set itself is gone', () => {
    const feeds = shared.feeds.map((each) =>
      each.id === 'F1' ? { ...each, from: { itemId: 'BAT2', portId: 'out' } } : each,
    );
    const items = [...shared.items, item('BAT2', 'bank', 'locker')];
    expect(grade(assessed({ ...shared, items, feeds }), 'bank:BAT2', 'ais-receive')).toBe('full');
  });
});

describe('failures', () => {
  it('tries the boat against the events it can have, in order', () => {
    expect(assessed(withSecondSet()).matrix.map((row) => row.event.id)).toEqual([
      'none',
      'mast:main',
      'structure:arch',
      'breaker:BRK',
      'device:SP',
      'bank:BAT',
      'bank:BAT2',
      'flood:saloon:BAT',
      'lightning',
      'position-source:GPS',
      'data-bus:BUS',
      'fire:hut',
      'abandon',
    ]);
  });

  it('floods a bank below the waterline and spares one above it', () => {
    const redundancy = assessed(withSecondSet());
    expect(grade(redundancy, 'flood:saloon:BAT', 'voice-fixed')).toBe('reduced');
    expect(grade(redundancy, 'flood:saloon:BAT', 'ais-receive')).toBe('lost');
  });

  it('leaves only stand-alone sets after a strike', () => {
    const redundancy = assessed(withSecondSet());
    expect(grade(redundancy, 'lightning', 'voice-fixed')).toBe('lost');
    expect(grade(redundancy, 'lightning', 'voice-handheld')).toBe('full');
    expect(grade(redundancy, 'lightning', 'beacon')).toBe('full');
  });

  it('takes to the raft what is at hand: reduced unless it is in the grab bag or floats free', () => {
    const redundancy = assessed(smallBoat());
    expect(state(redundancy, 'abandon', 'voice-handheld')).toMatchObject({
      grade: 'reduced',
      reason: expect.stringMatching(/picked up/),
    });
    expect(grade(redundancy, 'abandon', 'beacon')).toBe('full');
    expect(grade(redundancy, 'abandon', 'voice-fixed')).toBe('lost');
  });

  it('carries a terminal out only when its supply is gone, it was unplugged, or the boat is left', () => {
    const boat = smallBoat();
    const facts = { overhead: 'carbon' as const };
    const terminal = (unpluggedInStorms: boolean) =>
      assessed({
        ...boat,
        items: [
          ...boat.items,
          item('SAT', 'terminal', 'hut', { facts: { unpluggedInStorms } }),
          item('A4', 'patch', 'arch', { facts }),
        ],
        runs: [...boat.runs, run('W8', 'SAT.ant', 'A4.rf')],
        feeds: [...boat.feeds, feed('F8', 'BRK', 'SAT')],
      });
    const redundancy = terminal(false);
    expect(state(redundancy, 'none', 'long-range')).toMatchObject({
      grade: 'lost',
      reason: expect.stringMatching(/no sky.*carried on deck.*reduced/),
    });
    expect(grade(redundancy, 'structure:arch', 'long-range')).toBe('lost');
    for (const event of ['breaker:BRK', 'bank:BAT', 'abandon'])
      expect(grade(redundancy, event, 'long-range')).toBe('reduced');
    expect(grade(redundancy, 'lightning', 'long-range')).toBe('lost');
    expect(grade(terminal(true), 'lightning', 'long-range')).toBe('reduced');
  });

  it('follows a wire antenna to the mast that holds it', () => {
    const boat = smallBoat();
    const wire = item('A1', 'whip', null, { endPosition: { xM: 5.4, yM: 0, zM: 15 } });
    const items = boat.items.map((each) => (each.id === 'A1' ? wire : each));
    expect(grade(assessed({ ...boat, items }), 'mast:main', 'voice-fixed')).toBe('lost');
  });
});

describe('failureView', () => {
  it('loses what the event takes, and what no longer serves because of it', () => {
    const boat = withSecondSet();
    const withLamp = { ...boat, items: [...boat.items, item('L1', 'lamp', 'masthead')] };
    const redundancy = assessed(withLamp);
    const { lost, live } = failureView(withLamp, redundancy, 'mast:main');
    for (const key of ['structure:main', 'item:A1', 'item:L1', 'run:W3', 'item:AIS', 'item:SP'])
      expect(lost).toContain(key);
    for (const key of ['item:VHF2', 'item:A2', 'run:W4', 'item:BAT2', 'item:HH']) expect(live).toContain(key);
    expect(lost).not.toContain('item:BAT');
    expect([...lost].filter((key) => live.has(key))).toEqual([]);
  });

  it('loses what has no supply left', () => {
    const boat = smallBoat();
    const { lost } = failureView(boat, assessed(boat), 'bank:BAT');
    for (const key of ['item:BAT', 'item:BRK', 'feed:F0', 'feed:F1', 'item:VHF', 'item:A1'])
      expect(lost).toContain(key);
    expect(lost).not.toContain('item:GPS');
  });

  it('loses nothing while nothing has failed, and refuses an event there is not', () => {
    const boat = smallBoat();
    expect(failureView(boat, assessed(boat), 'none').lost.size).toBe(0);
    expect(() => failureView(boat, assessed(boat), 'sharknado')).toThrow(RangeError);
  });

  it('follows the position to the other end of a data link', () => {
    const boat = smallBoat({ dataLinks: [link('D9', 'GPS', 'VHF')] });
    expect(grade(assessed(boat), 'none', 'digital-alert')).toBe('full');
  });
});
