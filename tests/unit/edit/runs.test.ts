import { describe, expect, it, vi } from 'vitest';
import { canConnect } from '../../../core/edit/connect.ts';
import { addDataLink, addFeed, setDataLink, setFeed } from '../../../core/edit/feeds.ts';
import { insertIntoRun, removeFromRun } from '../../../core/edit/inline.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { addBend, moveBend, removeBend } from '../../../core/edit/route.ts';
import { addRun, reconnectRun, setRun } from '../../../core/edit/runs.ts';
import { routedLengthM, runLengthM } from '../../../core/links/route.ts';
import type { Endpoint, Project } from '../../../core/model/project.ts';
import {
  AIS,
  BREAKER,
  GNSS_ANTENNA,
  item,
  JOINT,
  PLUG,
  RX_SPLITTER,
  run,
  SPLITTER,
  smallBoat,
  THICK,
  THIN,
  TV,
  VHF,
  WHIP,
} from '../document/boat.ts';
import { expectSound, frozen, last, refusal } from './support.ts';

// The defaults are chosen from the parts of the small boat alone.
vi.mock('../../../core/catalogue/catalogue.ts', () => ({ CATALOGUE: [] }));

const boat = (): Project => frozen(smallBoat());
const end = (itemId: string, portId: string): Endpoint => ({ itemId, portId });

/** The small boat with an AIS set, a second whip, a GNSS antenna and two splitters, none of them connected. */
function bigger(): Project {
  const project = smallBoat();
  return frozen({
    ...project,
    items: [
      ...project.items,
      item('ais', AIS.id, 'AIS-1', 6.2, 0.8),
      item('whip2', WHIP.id, 'A2', 11, 3),
      item('gnss', GNSS_ANTENNA.id, 'A3', 8, 2),
      item('s1', SPLITTER.id, 'SP-1', 6, 1),
      item('s2', SPLITTER.id, 'SP-2', 7, 1),
      item('rx', RX_SPLITTER.id, 'SP-3', 7, 1.2),
      item('b2', BREAKER.id, 'B2', 6, 0.9),
    ],
  });
}

describe('canConnect', () => {
  const reason = (project: Project, a: Endpoint, b: Endpoint): string => {
    const fit = canConnect(project, a, b);
    return fit.fits ? '' : fit.reason;
  };

  it('takes what fits', () => {
    expect(canConnect(bigger(), end('whip2', 'feed'), end('s1', 'antenna'))).toEqual({ fits: true });
    expect(canConnect(bigger(), end('vhf', 'nmea'), end('ais', 'nmea'))).toEqual({ fits: true });
    expect(canConnect(bigger(), end('ais', 'dc'), end('breaker', 'out'))).toEqual({ fits: true });
  });

  it('refuses a taken port', () => {
    expect(reason(bigger(), end('whip2', 'feed'), end('vhf', 'ant'))).toBe(
      'VHF-1, Antenna, already has run W01: take that off first, or put a splitter or switch into it.',
    );
  });

  it('refuses bands that have nothing in common', () => {
    expect(reason(bigger(), end('gnss', 'feed'), end('ais', 'ant'))).toBe(
      'A GNSS antenna (A3) does not fit a marine VHF socket (AIS-1): no band in common.',
    );
  });

  it('refuses to close a loop of coax', () => {
    const joined = addRun(bigger(), { from: end('s1', 'vhf'), to: end('s2', 'vhf') });
    expect(reason(joined, end('s1', 'ais'), end('s2', 'ais'))).toBe(
      'This would close a loop of coax: SP-1 – the new run – SP-2 – W02 – SP-1. Leave one of these runs out.',
    );
  });

  it('refuses to feed a supply back into itself, whichever way it is drawn', () => {
    const fed = addFeed(bigger(), { from: end('breaker', 'out'), to: end('b2', 'in') });
    const sentence =
      'This would feed the supply back into itself: B2 → the new feed → B1 → F03 → B2. Leave one of these feeds out.';
    expect(reason(fed, end('b2', 'out'), end('breaker', 'in'))).toBe(sentence);
    expect(reason(fed, end('breaker', 'in'), end('b2', 'out'))).toBe(sentence);
  });

  it('refuses the same feed or link twice', () => {
    expect(reason(bigger(), end('vhf', 'dc'), end('breaker', 'out'))).toBe(
      'F02 already joins these two: change that one instead.',
    );
  });

  it('refuses items, ports and parts that are not known', () => {
    expect(reason(boat(), end('x', 'a'), end('vhf', 'ant'))).toBe('There is no item "x" in this project.');
    expect(reason(boat(), end('whip', 'a'), end('vhf', 'ant'))).toBe('A1 (Test VHF whip) has no port "a".');
    const unknown = frozen({ ...smallBoat(), items: [...smallBoat().items, item('x', 'of-2031', 'X1', 1, 1)] });
    expect(reason(unknown, end('x', 'a'), end('vhf', 'ant'))).toBe(
      'X1 is a part this program does not know ("of-2031"): choose a known part for it first.',
    );
  });

  it('cautions about a transmitter on a receive-only splitter', () => {
    expect(canConnect(bigger(), end('ais', 'ant'), end('rx', 'out1'))).toEqual({
      fits: true,
      caution:
        'SP-3 is not made to be transmitted through here, and AIS-1 puts 5 W into it. ' +
        'The ends differ, BNC at AIS-1 and UHF (PL-259) at SP-3: make the run up with a plug for each, or use an adapter.',
    });
  });
});

describe('runs', () => {
  it('get the next number, the usual cable and plugs that fit', () => {
    const after = addRun(bigger(), { from: end('whip2', 'feed'), to: end('s1', 'antenna') });
    expect(last(after.runs)).toMatchObject({
      id: 'run-2',
      number: 'W02',
      cableId: THICK.id,
      connectorFromId: PLUG.id,
      connectorToId: PLUG.id,
      status: 'new',
    });
    expectSound(after);
    const gnss = addRun(bigger(), { from: end('gnss', 'feed'), to: end('ais', 'gnss') });
    expect(last(gnss.runs)).toMatchObject({ cableId: THIN.id, connectorFromId: null, connectorToId: null });
    const chosen = addRun(bigger(), { from: end('whip2', 'feed'), to: end('s1', 'antenna'), cableId: TV.id });
    expect(last(chosen.runs).cableId).toBe(TV.id);
  });

  it('are numbered after the highest in any layout', () => {
    const { items, feeds, dataLinks } = smallBoat();
    const runs = [run('W41', ['whip', 'feed'], ['vhf', 'ant'])];
    const alternatives = [{ id: 'layout-1', name: 'Other', note: '', items, runs, feeds, dataLinks }];
    const after = addRun({ ...bigger(), alternatives }, { from: end('whip2', 'feed'), to: end('ais', 'ant') });
    expect(last(after.runs)).toMatchObject({ id: 'run-42', number: 'W42' });
  });

  it('are refused with the reason of canConnect, and for a cable that is none', () => {
    expect(refusal(() => addRun(bigger(), { from: end('whip', 'feed'), to: end('whip2', 'feed') }))).toBe(
      'A1 and A2 are both antennas: lead one of them to a radio or a splitter instead.',
    );
    expect(
      refusal(() => addRun(bigger(), { from: end('whip2', 'feed'), to: end('s1', 'antenna'), cableId: VHF.id })),
    ).toBe('Test VHF set is not a cable: choose a cable from the list.');
    expect(refusal(() => addRun(bigger(), { from: end('vhf', 'nmea'), to: end('ais', 'nmea') }))).toBe(
      'A cable run joins two antenna sockets: draw a DC feed or a data link between these.',
    );
  });

  it('are changed, and refuse what is out of range', () => {
    const after = setRun(boat(), 'run-1', {
      measuredLengthM: 17,
      slackM: 0.5,
      cableId: THIN.id,
      facts: { coiledM: 2.3 },
    });
    expect(after.runs[0]).toMatchObject({
      measuredLengthM: 17,
      slackM: 0.5,
      cableId: THIN.id,
      facts: { coiledM: 2.3 },
    });
    expectSound(after);
    expect(refusal(() => setRun(boat(), 'run-1', { measuredLengthM: -3 }))).toBe(
      'W01: Measured length is −3 m; the least allowed is 0 m. Put in a value from 0 to 2000 m.',
    );
    expect(refusal(() => setRun(boat(), 'run-1', { number: '' }))).toBe(
      'W01 needs a number: it stands on both of its labels.',
    );
    expect(refusal(() => setRun(boat(), 'run-1', { connectorToId: THIN.id }))).toBe(
      't-thin is not a connector: choose a connector from the list.',
    );
    const two = addRun(bigger(), { from: end('whip2', 'feed'), to: end('s1', 'antenna') });
    expect(refusal(() => setRun(two, 'run-2', { number: 'W01' }))).toBe(
      'The number W01 is taken: choose another. Text of a wrong label goes into the label text.',
    );
  });

  it('are taken to another port', () => {
    const after = reconnectRun(bigger(), 'run-1', 'to', end('s1', 'vhf'));
    expect(after.runs[0]).toMatchObject({ id: 'run-1', to: end('s1', 'vhf'), connectorToId: PLUG.id });
    expectSound(after);
    expect(refusal(() => reconnectRun(bigger(), 'run-1', 'to', end('ais', 'gnss')))).toBe(
      'A marine VHF antenna (A1) does not fit a GNSS socket (AIS-1): no band in common.',
    );
    const before = bigger();
    expect(reconnectRun(before, 'run-1', 'to', end('vhf', 'ant'))).toBe(before);
  });
});

describe('routes', () => {
  it('bend on the nearest leg, through a place, and straighten again', () => {
    const bent = addBend(boat(), 'run-1', { position: { xM: 4.8, yM: 0, zM: 9 } });
    expect(bent.runs[0]?.via.map(({ position }) => position.zM)).toEqual([9, 0.8]);
    const placed = moveBend(bent, 'run-1', 1, { position: { xM: 0, yM: 0, zM: 0 }, placeId: 'mast-1-foot' });
    expect(placed.runs[0]?.via[1]).toEqual({ position: { xM: 4.68, yM: 0, zM: 1.64 }, placeId: 'mast-1-foot' });
    expectSound(placed);
    expect(removeBend(removeBend(placed, 'run-1', 0), 'run-1', 0).runs[0]?.via).toEqual([]);
  });

  it('refuse bends that are not there', () => {
    expect(refusal(() => removeBend(boat(), 'run-1', 3))).toBe('W01 has 1 bend; there is no bend 4.');
    expect(refusal(() => removeBend(removeBend(boat(), 'run-1', 0), 'run-1', 0))).toBe(
      'W01 has no bends yet: add one first.',
    );
    expect(refusal(() => addBend(boat(), 'run-1', { position: { xM: 1, yM: 0, zM: 1 }, placeId: 'x' }))).toBe(
      'There is no place "x" in this project.',
    );
  });
});

describe('an inline device in a run', () => {
  // Route of W01: (4.7, 16) down to (4.7, 0.8), 15.2 m, then aft to (6, 0.8), 1.3 m.
  const measured = (): Project =>
    frozen(setRun(boat(), 'run-1', { measuredLengthM: 33, slackM: 1, facts: { coiledM: 3, wet: true } }));

  it('divides lengths where it sits, keeps the number of the first half and numbers the second', () => {
    const after = insertIntoRun(measured(), 'run-1', JOINT.id, { xM: 4.7, yM: 0, zM: 1.64 });
    const device = last(after.items);
    expect(device).toMatchObject({ tag: 'J1', placeId: 'mast-1-foot' });
    const [first, second] = after.runs;
    expect(first).toMatchObject({
      id: 'run-1',
      number: 'W01',
      from: end('whip', 'feed'),
      to: end(device.id, 'antenna'),
    });
    expect(second).toMatchObject({ id: 'run-2', number: 'W02', from: end(device.id, 'b'), to: end('vhf', 'ant') });
    // 14.36 m of 16.5 m lie before the joint.
    expect(first?.measuredLengthM).toBeCloseTo((33 * 14.36) / 16.5, 3);
    expect((first?.measuredLengthM ?? 0) + (second?.measuredLengthM ?? 0)).toBeCloseTo(33, 9);
    expect((first?.slackM ?? 0) + (second?.slackM ?? 0)).toBeCloseTo(1, 9);
    expect((first?.facts.coiledM ?? 0) + (second?.facts.coiledM ?? 0)).toBeCloseTo(3, 2);
    expect([first?.facts.wet, second?.facts.wet]).toEqual([true, true]);
    expect([first?.via.length, second?.via.length]).toEqual([0, 1]);
    expectSound(after);
  });

  it('goes into the middle of the route when no position is given', () => {
    const after = insertIntoRun(measured(), 'run-1', JOINT.id);
    expect(last(after.items).position).toEqual({ xM: 4.7, yM: 0, zM: 7.75 });
    expect(after.runs.map(({ measuredLengthM }) => measuredLengthM)).toEqual([16.5, 16.5]);
  });

  it('a splitter turns its antenna socket to the antenna and the right branch to the radio', () => {
    const after = insertIntoRun(measured(), 'run-1', SPLITTER.id, { xM: 6, yM: 0, zM: 1 });
    const device = last(after.items);
    expect(after.runs[0]?.to).toEqual(end(device.id, 'antenna'));
    expect(after.runs[1]?.from).toEqual(end(device.id, 'vhf'));
    const turned = frozen({ ...smallBoat(), runs: [run('W01', ['vhf', 'ant'], ['whip', 'feed'])] });
    const other = insertIntoRun(turned, 'run-1', SPLITTER.id);
    expect(other.runs[0]?.to.portId).toBe('vhf');
    expect(other.runs[1]?.from.portId).toBe('antenna');
    expectSound(other);
  });

  it('an AIS set gets the AIS branch', () => {
    const project = addRun(bigger(), { from: end('whip2', 'feed'), to: end('ais', 'ant') });
    const after = insertIntoRun(project, 'run-2', SPLITTER.id);
    expect(last(after.runs).from.portId).toBe('ais');
    expectSound(after);
  });

  it('is refused when the part is none, or has no band in common', () => {
    expect(refusal(() => insertIntoRun(boat(), 'run-1', WHIP.id))).toBe(
      'Test VHF whip does not go into a run: choose a joint, splitter, arrestor or other inline device.',
    );
    const gnss = addRun(bigger(), { from: end('gnss', 'feed'), to: end('ais', 'gnss') });
    expect(refusal(() => insertIntoRun(gnss, 'run-2', SPLITTER.id))).toBe(
      'Test splitter does not go into W02: its sockets have no band in common with what the run joins.',
    );
  });

  it('is taken out again and the cable made good', () => {
    const before = measured();
    const inserted = insertIntoRun(before, 'run-1', JOINT.id, { xM: 4.7, yM: 0, zM: 7 });
    const after = removeFromRun(inserted, last(inserted.items).id);
    expect(after.items).toEqual(before.items);
    expect(after.runs).toHaveLength(1);
    expect(after.runs[0]).toMatchObject({
      id: 'run-1',
      number: 'W01',
      from: end('whip', 'feed'),
      to: end('vhf', 'ant'),
      measuredLengthM: 33,
      slackM: 1,
      facts: { wet: true },
    });
    expect(after.runs[0]?.facts.coiledM).toBeCloseTo(3, 2);
    const [now, then] = [after.runs[0], before.runs[0]];
    if (now && then) expect(routedLengthM(after, now)).toBeCloseTo(routedLengthM(before, then), 6);
    expectSound(after);
  });

  it('takes an unmeasured half as it is routed, and the cable of the longer half', () => {
    const inserted = insertIntoRun(boat(), 'run-1', JOINT.id, { xM: 4.7, yM: 0, zM: 7 });
    const [first, second] = inserted.runs;
    if (!first || !second) throw new Error('two runs');
    const mixed = setRun(setRun(inserted, first.id, { measuredLengthM: 20 }), second.id, { cableId: THIN.id });
    const after = removeFromRun(mixed, last(mixed.items).id);
    expect(after.runs[0]?.measuredLengthM).toBeCloseTo(20 + runLengthM(mixed, second), 3);
    expect(after.runs[0]?.cableId).toBe(THICK.id);
  });

  it('works for halves drawn in any direction', () => {
    const project = smallBoat();
    for (const [a, b] of [
      [run('W01', ['j', 'antenna'], ['whip', 'feed']), run('W02', ['vhf', 'ant'], ['j', 'b'])],
      [run('W01', ['vhf', 'ant'], ['j', 'b']), run('W02', ['j', 'antenna'], ['whip', 'feed'])],
      [run('W01', ['whip', 'feed'], ['j', 'antenna']), run('W02', ['vhf', 'ant'], ['j', 'b'])],
    ] as const) {
      const items = [...project.items, item('j', JOINT.id, 'J1', 4.7, 1)];
      const after = removeFromRun(frozen({ ...project, items, runs: [a, b] }), 'j');
      const ends = [after.runs[0]?.from.itemId, after.runs[0]?.to.itemId];
      // As the first run was drawn: towards the joint or away from it.
      const farEnd = a.from.itemId === 'j' ? a.to.itemId : a.from.itemId;
      expect(ends[a.from.itemId === 'j' ? 1 : 0]).toBe(farEnd);
      expect(new Set(ends)).toEqual(new Set(['whip', 'vhf']));
      expectSound(after);
    }
  });

  it('is not taken out when it joins more or fewer than two runs', () => {
    const inserted = insertIntoRun(boat(), 'run-1', JOINT.id);
    const one = removeSubjects(inserted, [{ kind: 'run', id: 'run-2' }]);
    expect(refusal(() => removeFromRun(one, last(one.items).id))).toBe(
      'J1 joins 1 cable run; only an inline device between two can be taken out and the cable made good. Delete it, or take runs off it first.',
    );
    expect(refusal(() => removeFromRun(boat(), 'vhf'))).toContain('VHF-1 joins 1 cable run');
  });

  it('is not taken out when the far ends do not go together', () => {
    const project = bigger();
    const runs = [run('W02', ['whip', 'feed'], ['s1', 'antenna']), run('W03', ['s1', 'vhf'], ['whip2', 'feed'])];
    expect(refusal(() => removeFromRun(frozen({ ...project, runs }), 's1'))).toBe(
      'A1 and A2 are both antennas: lead one of them to a radio or a splitter instead.',
    );
  });
});

describe('feeds and links', () => {
  it('a feed goes from source to load however it is drawn, by the way along the boat', () => {
    const after = addFeed(bigger(), { from: end('ais', 'dc'), to: end('breaker', 'out') });
    expect(last(after.feeds)).toMatchObject({
      number: 'F03',
      from: end('breaker', 'out'),
      to: end('ais', 'dc'),
      conductorId: 't-wire',
      // 0.2 m aft and 0.1 m down: to the next half metre.
      lengthM: 0.5,
      fuse: null,
    });
    expectSound(after);
  });

  it('are changed and refuse nonsense', () => {
    const after = setFeed(boat(), 'feed-1', { lengthM: 7.5, fuse: { ratingA: 10, fromSourceM: 0.2 } });
    expect(after.feeds[0]).toMatchObject({ lengthM: 7.5, fuse: { ratingA: 10 } });
    expect(refusal(() => setFeed(boat(), 'feed-1', { lengthM: -1 }))).toBe(
      'F01: Length is −1 m; the least allowed is 0 m. Put in a value from 0 to 2000 m.',
    );
    expect(refusal(() => setFeed(boat(), 'feed-1', { conductorId: THIN.id }))).toBe(
      't-thin is not a DC conductor: choose a DC conductor from the list.',
    );
    expect(refusal(() => addFeed(bigger(), { from: end('bank', 'out'), to: end('breaker', 'out') }))).toBe(
      'BAT-1 and B1 both give current: a feed ends at the supply terminals of a load.',
    );
    expect(refusal(() => addFeed(bigger(), { from: end('whip2', 'feed'), to: end('ais', 'ant') }))).toBe(
      'A DC feed joins supply terminals: draw a cable run or a data link here.',
    );
  });

  it('a link carries position until told otherwise', () => {
    const after = addDataLink(bigger(), { from: end('ais', 'nmea'), to: end('vhf', 'nmea') });
    expect(last(after.dataLinks)).toMatchObject({ number: 'D01', carries: ['position'], standard: 'nmea-0183' });
    const changed = setDataLink(after, 'link-1', { carries: ['position', 'ais'], standard: 'nmea-2000' });
    expect(last(changed.dataLinks)).toMatchObject({ carries: ['position', 'ais'], standard: 'nmea-2000' });
    expectSound(changed);
    expect(refusal(() => setDataLink(after, 'link-1', { carries: [] }))).toBe(
      'D01: Carries is an empty list. Put in at least one entry.',
    );
    expect(refusal(() => addDataLink(bigger(), { from: end('whip2', 'feed'), to: end('ais', 'ant') }))).toBe(
      'A data link joins data ports: draw a cable run or a DC feed here.',
    );
  });
});
