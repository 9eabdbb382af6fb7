import { describe, expect, it } from 'vitest';
import type { Part, PartOf, Port } from '../../../core/model/part.ts';
import { type Feed, feedSchema, type Item, type Project } from '../../../core/model/project.ts';
import { copperOhmPerKm } from '../../../core/power/drop.ts';
import { assessFeeds } from '../../../core/power/feeds.ts';
import type { FeedResult } from '../../../core/power/types.ts';
import { AIS, f, item, project, radio } from '../links/fixture.ts';

const dc = (id: string, role: 'in' | 'out'): Port => ({ id, medium: 'dc', label: id, role });
const power = (id: string, powerClass: PartOf<'power'>['powerClass'], ratingA?: number): Part => ({
  kind: 'power',
  id,
  name: id,
  description: '',
  ports: [dc('in', 'in'), dc('out', 'out')],
  powerClass,
  figures: { voltageV: f(12.6), ...(ratingA === undefined ? {} : { ratingA: f(ratingA) }) },
  traits: {},
});
const wire = (areaMm2: number, ampacityA: number, awg: string | null = null): Part => ({
  kind: 'conductor',
  id: `wire-${areaMm2}`,
  name: `${areaMm2} mm²`,
  description: '',
  ports: [],
  figures: { areaMm2: f(areaMm2), ohmPerKm: f(copperOhmPerKm(areaMm2)), ampacityA: f(ampacityA) },
  traits: { awg },
});
// Ampacities made round; real ones are in the catalogue.
const PARTS: Part[] = [
  power('bank', 'battery-bank'),
  power('panel', 'panel'),
  power('breaker10', 'breaker', 10),
  power('breaker60', 'breaker', 60),
  wire(1.5, 20),
  wire(2.5, 30),
  wire(4, 40),
  wire(6, 50),
  wire(5.26, 60, '10'),
  radio('vhfset', { ports: [dc('dc', 'in')] }),
  { ...AIS, id: 'aisset', figures: { ...AIS.figures, txCurrentA: f(4.5), rxCurrentA: f(0.3) } },
];
const feed = (id: string, from: string, to: string, lengthM: number, areaMm2: number, over: Partial<Feed> = {}): Feed =>
  feedSchema.parse({
    id,
    number: id,
    from: { itemId: from, portId: 'out' },
    to: { itemId: to, portId: 'dc' },
    conductorId: `wire-${areaMm2}`,
    lengthM,
    ...over,
  });
const FUSE = { ratingA: 10, fromSourceM: 0.1 };

const boat = (items: Item[], feeds: Feed[], over: Partial<Project> = {}): Project =>
  project(items, [], PARTS, { feeds, ...over });
const simple = (lengthM: number, areaMm2: number, over: Partial<Feed> = { fuse: FUSE }) =>
  boat([item('bank', 'bank'), item('vhf', 'vhfset')], [feed('f1', 'bank', 'vhf', lengthM, areaMm2, over)]);
const only = (p: Project): FeedResult => {
  const [first] = assessFeeds(p);
  if (!first) throw new Error('no feed');
  return first;
};

describe('drop of one feed', () => {
  it.each([
    [7.5, 1.5, 0.96, 7.6],
    [9, 2.5, 0.69, 5.5],
    [7.5, 4, 0.36, 2.9],
    [7.5, 6, 0.24, 1.9],
    [9, 6, 0.29, 2.3],
    [4, 2.5, 0.31, 2.4],
  ])('%f m of %f mm² at 5.5 A: %f V, %f %% of 12.6 V (worked by hand for the demo boats)', (m, mm2, volts, percent) => {
    const result = only(simple(m, mm2));
    expect(result.currentA).toBe(5.5);
    expect(result.dropV).toBeCloseTo(volts, 2);
    expect(result.totalDropV).toBe(result.dropV);
    expect(result.totalDropPercent).toBeCloseTo(percent, 1);
  });

  it('names the smallest listed conductor of the same family that would do', () => {
    expect(only(simple(7.5, 1.5)).smallestAreaMm2).toBe(4);
    expect(only(simple(9, 2.5)).smallestAreaMm2).toBe(6);
    expect(only(simple(7.5, 5.26)).smallestAreaMm2).toBe(5.26);
    expect(only(simple(900, 1.5)).smallestAreaMm2).toBeNull();
  });

  it('nothing that is to be removed counts', () => {
    expect(assessFeeds(simple(5, 4, { status: 'remove' }))).toEqual([]);
  });
});

describe('shared feeds', () => {
  const shared = boat(
    [
      item('bank', 'bank'),
      item('panel', 'panel'),
      item('vhf', 'vhfset'),
      item('vhf2', 'vhfset'),
      item('ais', 'aisset'),
    ],
    [
      feed('main', 'bank', 'panel', 2, 6, { fuse: { ratingA: 30, fromSourceM: 0.1 } }),
      feed('a', 'panel', 'vhf', 3, 2.5),
      feed('b', 'panel', 'vhf2', 3, 2.5),
      feed('c', 'panel', 'ais', 3, 2.5),
    ],
  );
  const result = (id: string): FeedResult => {
    const found = assessFeeds(shared).find(({ feedId }) => feedId === id);
    if (!found) throw new Error(id);
    return found;
  };

  it('carry one transmission and everybody else at rest', () => {
    // 0.5 + 0.5 + 0.3 at rest, and one VHF adds 5.0.
    expect(result('main').currentA).toBeCloseTo(6.3, 9);
    expect(result('a').currentA).toBe(5.5);
  });

  it('add their drop to what hangs on them, each with its own transmission', () => {
    const per = (areaMm2: number, m: number, a: number) => (a * 2 * m * copperOhmPerKm(areaMm2)) / 1000;
    expect(result('a').totalDropV).toBeCloseTo(per(2.5, 3, 5.5) + per(6, 2, 6.3), 9);
    expect(result('c').totalDropV).toBeCloseTo(per(2.5, 3, 4.5) + per(6, 2, 5.5), 9);
    expect(result('main').totalDropV).toBeCloseTo(per(6, 2, 6.3), 9);
  });

  it('hand their fuse on to what hangs on a panel without breakers', () => {
    expect(result('a').protection).toMatchObject({ present: true, ratingA: 30, fromSourceM: 0, verdict: 'good' });
  });

  it('what hangs on an inverter draws its power from the battery: 0.5 A at 230 V is 10.7 A at 12.6', () => {
    const mains = { ...power('inverter', 'inverter', 100), figures: { voltageV: f(230) } } as Part;
    const set = radio('mains-set', {
      ports: [dc('dc', 'in')],
      figures: { ...radio('x').figures, txCurrentA: f(0.5), rxCurrentA: f(0.5) },
    });
    const p = project(
      [item('bank', 'bank'), item('inv', 'inverter'), item('sat', 'mains-set')],
      [],
      [...PARTS, mains, set],
      {
        feeds: [feed('in', 'bank', 'inv', 1, 6, { fuse: FUSE }), feed('out', 'inv', 'sat', 5, 1.5)],
      },
    );
    const [into, out] = assessFeeds(p);
    expect(into?.currentA).toBeCloseTo((0.5 * 230) / 12.6 / 0.85, 9);
    expect(out?.currentA).toBe(0.5);
    expect(out?.totalDropPercent).toBeCloseTo((100 * (out?.dropV ?? 0)) / 230, 9);
    expect(out?.protection.verdict).toBe('good');
  });

  it('a ring of panels ends', () => {
    const ring = boat(
      [item('p1', 'panel'), item('p2', 'panel'), item('vhf', 'vhfset')],
      [feed('x', 'p1', 'p2', 1, 6), feed('y', 'p2', 'p1', 1, 6), feed('z', 'p2', 'vhf', 1, 6)],
    );
    const results = assessFeeds(ring);
    expect(results.map(({ feedId }) => feedId)).toEqual(['x', 'y', 'z']);
    expect(results.every(({ totalDropV }) => Number.isFinite(totalDropV))).toBe(true);
    expect(results[2]?.protection.verdict).toBe('missing');
  });
});

describe('protection', () => {
  const verdict = (fuse: Feed['fuse'], areaMm2 = 2.5) => only(simple(4, areaMm2, { fuse })).protection.verdict;

  it('missing, too far, too large, too small, good', () => {
    expect(verdict(null)).toBe('missing');
    expect(verdict({ ratingA: 10, fromSourceM: 0.5 })).toBe('too-far');
    expect(verdict({ ratingA: 50, fromSourceM: 0.1 })).toBe('too-large');
    expect(verdict({ ratingA: 5, fromSourceM: 0.1 })).toBe('too-small-for-load');
    expect(verdict(FUSE)).toBe('good');
  });

  it('150 per cent of ampacity is allowed below 50 V (33 CFR 183.455(c)), and no more', () => {
    expect(verdict({ ratingA: 45, fromSourceM: 0.1 })).toBe('good');
    expect(verdict({ ratingA: 45.1, fromSourceM: 0.1 })).toBe('too-large');
  });

  it('200 mm from the source is near enough (7 in by 33 CFR 183.455(b), 200 mm by ISO 10133 from memory)', () => {
    expect(verdict({ ratingA: 10, fromSourceM: 0.2 })).toBe('good');
    expect(verdict({ ratingA: 10, fromSourceM: 0.21 })).toBe('too-far');
  });

  it('a breaker protects the wire that leaves it, and the wire that reaches it only from near the source', () => {
    const through = (lengthM: number) =>
      boat(
        [item('bank', 'bank'), item('b', 'breaker10'), item('vhf', 'vhfset')],
        [feed('in', 'bank', 'b', lengthM, 2.5), feed('out', 'b', 'vhf', 4, 2.5)],
      );
    const verdicts = (p: Project) => assessFeeds(p).map(({ protection }) => protection.verdict);
    expect(verdicts(through(0.15))).toEqual(['good', 'good']);
    expect(verdicts(through(1.5))).toEqual(['too-far', 'good']);
  });

  it('a breaker too large for the thin wire behind it is too large', () => {
    const p = boat(
      [item('bank', 'bank'), item('b', 'breaker60'), item('vhf', 'vhfset')],
      [feed('in', 'bank', 'b', 0.1, 6), feed('out', 'b', 'vhf', 4, 1.5)],
    );
    expect(assessFeeds(p)[1]?.protection).toMatchObject({ verdict: 'too-large', largestRatingA: 30 });
  });

  it('the bursts of an AIS do not blow a 3 A fuse', () => {
    const p = boat(
      [item('bank', 'bank'), item('ais', 'aisset')],
      [feed('f', 'bank', 'ais', 3, 2.5, { fuse: { ratingA: 3, fromSourceM: 0.1 } })],
    );
    expect(only(p)).toMatchObject({ currentA: 4.5, protection: { verdict: 'good' } });
  });
});

describe('remembering', () => {
  it('gives the same list while no feed and no part at one changed', () => {
    const base = simple(4, 2.5);
    const moved = { ...base, items: base.items.map((i) => ({ ...i, position: { ...i.position, zM: 3 } })) };
    expect(assessFeeds(moved)).toBe(assessFeeds(base));
    const stricter = { ...base, settings: { ...base.settings, voltageDropLimitPercent: 1 } };
    expect(only(stricter).limitPercent).toBe(1);
  });
});
