import { describe, expect, it } from 'vitest';
import { budgetPaths, MAX_SHOWN_VSWR } from '../../../core/links/budget.ts';
import type { Measurement } from '../../../core/model/project.ts';
import { mismatchLossDb, openEndVswr } from '../../../core/rf/mismatch.ts';
import { f, item, project, radio, run } from './fixture.ts';

const CABLE_DB = (lengthM: number, mhz = 156.8) => (Math.sqrt(mhz) * lengthM) / 100;
const PLUG_DB = 0.01 + 0.02 * 0.568;
const WHIP_DB = mismatchLossDb(1.5);

const only = <T>(list: readonly T[]): T => {
  expect(list).toHaveLength(1);
  const [first] = list;
  if (first === undefined) throw new Error('empty');
  return first;
};

const plain = () =>
  project(
    [item('vhf1', 'vhf'), item('whip1', 'whip', 16)],
    [run('w1', 'whip1.feed', 'vhf1.ant', 20, { connectorFromId: 'plug', connectorToId: 'plug' })],
  );

const measurement = (over: Partial<Measurement>): Measurement => ({
  id: 'm1',
  subject: { kind: 'item', id: 'vhf1' },
  kind: 'open-end-vswr',
  value: 2.2,
  frequencyMhz: 156.8,
  date: null,
  instrument: '',
  note: '',
  ...over,
});

describe('a radio, one run, one antenna', () => {
  it('lists plug, cable, plug and mismatch from the radio outwards, adding up', () => {
    const path = only(budgetPaths(plain()));
    expect(path.elements.map(({ kind }) => kind)).toEqual(['connector', 'cable', 'connector', 'mismatch']);
    expect(path.lossDb).toBeCloseTo(CABLE_DB(20) + 2 * PLUG_DB + WHIP_DB, 9);
    expect(path.elements.at(-1)?.runningLossDb).toBeCloseTo(path.lossDb, 12);
    expect(path.elements.reduce((sum, { shareLostPercent }) => sum + shareLostPercent, 0)).toBeCloseTo(
      path.lostPercent,
      9,
    );
  });

  it('starts with the set’s power, hands each element what the last left, and ends with the watts at the antenna', () => {
    const path = only(budgetPaths(plain()));
    expect(path.elements[0]?.wattsIn).toBe(25);
    path.elements.slice(1).forEach((element, i) => {
      expect(element.wattsIn).toBeCloseTo(path.elements[i]?.wattsOut ?? Number.NaN, 12);
    });
    expect(path.elements.at(-1)?.wattsOut).toBeCloseTo(path.wattsAtAntenna ?? Number.NaN, 12);
    expect(path.wattsAtAntenna).toBeCloseTo(25 * 10 ** (-path.lossDb / 10), 9);
    expect(path.eirpDbm).toBeCloseTo(43.979 - path.lossDb + 2.15, 3);
  });

  it('has the height of the feed, the service and the frequency', () => {
    const path = only(budgetPaths(plain()));
    expect(path).toMatchObject({ id: 'vhf1.ant>whip1', service: 'vhf-voice', frequencyMhz: 156.8, canTransmit: true });
    expect(path.antennaHeightM).toBe(16.5);
  });

  it('predicts the open-end VSWR from the feeder without what the antenna throws back', () => {
    const path = only(budgetPaths(plain()));
    expect(path.openEndVswr).toBeCloseTo(openEndVswr(path.lossDb - WHIP_DB), 9);
  });

  it('a run of no length changes nothing, and its open end is off the scale', () => {
    const path = only(
      budgetPaths(project([item('vhf1', 'vhf'), item('whip1', 'whip')], [run('w1', 'vhf1.ant', 'whip1.feed', 0)])),
    );
    expect(path.lossDb).toBeCloseTo(WHIP_DB, 12);
    expect(path.openEndVswr).toBe(MAX_SHOWN_VSWR);
  });

  it('reads the same whichever way round the run was drawn', () => {
    const turned = project(
      [item('vhf1', 'vhf'), item('whip1', 'whip', 16)],
      [run('w1', 'vhf1.ant', 'whip1.feed', 20, { connectorFromId: 'plug', connectorToId: 'plug' })],
    );
    expect(only(budgetPaths(turned))).toEqual(only(budgetPaths(plain())));
  });

  it('carries a cable on beyond its table with its tolerance widened, and says so', () => {
    const high = radio('high', { figures: { ...radio('x').figures, frequencyMhz: f(1621) } });
    const port = high.ports.map((p) => (p.medium === 'rf' ? { ...p, bands: ['l-band' as const] } : p));
    const path = only(
      budgetPaths(
        project(
          [item('sat', 'high'), item('whip1', 'whip')],
          [run('w1', 'sat.ant', 'whip1.feed', 10)],
          [{ ...high, ports: port }],
        ),
      ),
    );
    const cable = path.elements.find(({ kind }) => kind === 'cable');
    expect(path.frequencyMhz).toBe(1621);
    expect(cable?.lossDb).toBeCloseTo(CABLE_DB(10, 1621), 9);
    expect(cable?.toleranceDb).toBeCloseTo(0.15 * CABLE_DB(10, 1621), 9);
    expect(cable?.basis).toBe('assumed');
  });
});

describe('through devices', () => {
  const shared = (device = 'splitter', end = 'vhf') =>
    project(
      [item('vhf1', 'vhf'), item('ais1', 'ais'), item('dev', device), item('whip1', 'whip', 16)],
      [
        run('w1', 'whip1.feed', `dev.${device === 'splitter' ? 'ant' : device === 'switch' ? 'common' : 'out'}`, 10),
        run('w2', `dev.${end}`, 'vhf1.ant', 1),
        ...(device === 'splitter' ? [run('w3', 'dev.ais', 'ais1.ant', 1)] : []),
      ],
    );

  it('a splitter joins each set to the antenna and never one set to the other', () => {
    expect(budgetPaths(shared()).map(({ id }) => id)).toEqual(['vhf1.ant>whip1', 'ais1.ant>whip1']);
    const [vhf, ais] = budgetPaths(shared());
    expect(vhf?.lossDb).toBeCloseTo(CABLE_DB(11) + 0.5 + WHIP_DB, 9);
    expect(ais?.lossDb).toBeCloseTo(CABLE_DB(11, 162) + 0.5 + WHIP_DB, 9);
    expect(ais).toMatchObject({ service: 'ais', txPowerW: 2, deviceIds: ['dev'], runIds: ['w3', 'w1'] });
  });

  it('a receive-only way forbids transmitting: no watts, no EIRP', () => {
    const path = only(budgetPaths(shared('tap', 'in')));
    expect(path).toMatchObject({ canTransmit: false, txPowerW: null, wattsAtAntenna: null, eirpDbm: null });
    expect(path.elements.every(({ wattsIn }) => wattsIn === null)).toBe(true);
  });

  it('a switch passes the way it stands, and names itself on the way it would have to be set for', () => {
    const ways = (port: string) =>
      budgetPaths(shared('switch', port)).map(({ id, switchIds }) => [id, switchIds.length]);
    expect(ways('one')).toEqual([['vhf1.ant>whip1', 0]]);
    expect(ways('two')).toEqual([['vhf1.ant>whip1', 1]]);
  });

  it('a joint counts as a joint', () => {
    const path = only(
      budgetPaths(
        project(
          [item('vhf1', 'vhf'), item('j1', 'joint'), item('whip1', 'whip')],
          [run('w1', 'whip1.feed', 'j1.a', 14), run('w2', 'j1.b', 'vhf1.ant', 6)],
        ),
      ),
    );
    expect(path.elements.map(({ kind }) => kind)).toEqual(['cable', 'joint', 'cable', 'mismatch']);
    expect(path.elements[1]).toMatchObject({ label: 'J1, joint', subject: { kind: 'item', id: 'j1' } });
  });

  it('loops end: two splitters tied to each other give each way once', () => {
    const looped = project(
      [item('vhf1', 'vhf'), item('s1', 'splitter'), item('s2', 'splitter'), item('whip1', 'whip')],
      [
        run('w1', 'vhf1.ant', 's1.vhf', 1),
        run('w2', 's1.ant', 's2.vhf', 1),
        run('w3', 's2.ant', 's1.ais', 1),
        run('w4', 's2.ais', 'whip1.feed', 1),
      ],
    );
    expect(budgetPaths(looped)).toEqual([]);
    const through = project(looped.items, [...looped.runs, run('w5', 's2.ant', 'whip1.feed', 1)]);
    expect(budgetPaths(through).map(({ id }) => id)).toEqual(['vhf1.ant>whip1']);
  });
});

describe('what counts', () => {
  it('nothing that is to be removed', () => {
    const base = plain();
    expect(budgetPaths({ ...base, runs: base.runs.map((r) => ({ ...r, status: 'remove' as const })) })).toEqual([]);
    expect(budgetPaths({ ...base, items: base.items.map((i) => ({ ...i, status: 'remove' as const })) })).toEqual([]);
  });

  it('a set with its antenna inside has a path without elements', () => {
    const inside = radio('sat', {
      radioClass: 'l-band-messenger',
      ports: [],
      figures: { ...radio('x').figures, frequencyMhz: f(1621), txPowerW: f(1.6) },
      traits: { ...radio('x').traits, integralAntenna: true },
    });
    const path = only(budgetPaths(project([item('sat1', 'sat', 4)], [], [inside])));
    expect(path).toMatchObject({ service: 'l-band', elements: [], lossDb: 0, wattsAtAntenna: 1.6, antennaHeightM: 4 });
  });

  it('the GNSS socket of an AIS set is reckoned at L1 and sends nothing', () => {
    const path = only(
      budgetPaths(project([item('ais1', 'ais'), item('g', 'whip')], [run('w', 'g.feed', 'ais1.gnss', 5)])),
    );
    expect(path).toMatchObject({ service: 'gnss', frequencyMhz: 1575.42, txPowerW: null });
  });

  it('two ways to one antenna keep two ids', () => {
    const twice = project(
      [item('vhf1', 'vhf'), item('whip1', 'whip')],
      [run('w1', 'vhf1.ant', 'whip1.feed', 1), run('w2', 'vhf1.ant', 'whip1.feed', 2)],
    );
    expect(budgetPaths(twice).map(({ id }) => id)).toEqual(['vhf1.ant>whip1', 'vhf1.ant>whip1#2']);
  });
});

describe('measured loss', () => {
  it('comes from an open-end VSWR at the radio: 2.2 is 4.26 dB', () => {
    const base = { ...plain(), measurements: [measurement({})] };
    expect(only(budgetPaths(base)).measuredLossDb).toBeCloseTo(4.26, 2);
    const onRun = { ...plain(), measurements: [measurement({ subject: { kind: 'run', id: 'w1' } })] };
    expect(only(budgetPaths(onRun)).measuredLossDb).toBeCloseTo(4.26, 2);
  });

  it('an insertion loss of a run stands in for that run alone', () => {
    const base = project(
      [item('vhf1', 'vhf'), item('j1', 'joint'), item('whip1', 'whip')],
      [run('w1', 'whip1.feed', 'j1.a', 14), run('w2', 'j1.b', 'vhf1.ant', 6)],
    );
    const subject = { kind: 'run', id: 'w1' } as const;
    const measured = { ...base, measurements: [measurement({ subject, kind: 'insertion-loss-db', value: 3 })] };
    expect(only(budgetPaths(measured)).measuredLossDb).toBeCloseTo(3 + 0.5 + CABLE_DB(6), 9);
  });

  it('a VSWR with the antenna on proves no loss', () => {
    const base = { ...plain(), measurements: [measurement({ kind: 'vswr', value: 1.2 })] };
    expect(only(budgetPaths(base)).measuredLossDb).toBeNull();
  });
});

describe('remembering', () => {
  it('keeps the same budget while nothing it depends on changes, and drops it when something does', () => {
    const base = project(
      [item('vhf1', 'vhf'), item('ais1', 'ais'), item('whip1', 'whip', 16), item('whip2', 'whip', 3)],
      [run('w1', 'whip1.feed', 'vhf1.ant', 20), run('w2', 'whip2.feed', 'ais1.ant', 5)],
    );
    const [vhf, ais] = budgetPaths(base);
    const moved = {
      ...base,
      items: base.items.map((i) => (i.id === 'whip2' ? { ...i, position: { ...i.position, zM: 4 } } : i)),
    };
    const [vhfAfter, aisAfter] = budgetPaths(moved);
    expect(vhfAfter).toBe(vhf);
    expect(aisAfter).not.toBe(ais);
    expect(aisAfter?.antennaHeightM).toBe(4.5);
    const longer = { ...base, runs: base.runs.map((r) => (r.id === 'w1' ? { ...r, measuredLengthM: 30 } : r)) };
    expect(budgetPaths(longer)[0]?.lossDb).toBeGreaterThan((vhf?.lossDb ?? 0) + 1);
  });

  it('a routed run lengthens when its antenna is dragged away', () => {
    const base = project(
      [item('vhf1', 'vhf'), item('whip1', 'whip', 16)],
      [run('w1', 'whip1.feed', 'vhf1.ant', 0, { measuredLengthM: null, slackM: 1 })],
    );
    const raised = {
      ...base,
      items: base.items.map((i) => (i.id === 'whip1' ? { ...i, position: { ...i.position, zM: 21 } } : i)),
    };
    expect(only(budgetPaths(base)).lossDb).toBeCloseTo(CABLE_DB(16) + WHIP_DB, 9);
    expect(only(budgetPaths(raised)).lossDb).toBeCloseTo(CABLE_DB(21) + WHIP_DB, 9);
  });
});
