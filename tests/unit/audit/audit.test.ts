import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { keepClearM } from '../../../core/audit/rules/people.ts';
import { RULES } from '../../../core/audit/rules.ts';
import type { Finding } from '../../../core/audit/types.ts';
import { figure } from '../../../core/model/figure.ts';
import type { Item, ItemFacts, Measurement, Project, RunFacts } from '../../../core/model/project.ts';
import { measurementSchema } from '../../../core/model/project.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { feed, item, link, P, run, smallBoat } from '../redundancy/smallBoat.ts';

function findingsOf(project: Project): readonly Finding[] {
  return assess(project).findings;
}

/** The small boat with nothing the rules would remark on: second set and antenna, all fused, position everywhere. */
function goodBoat(): Project {
  const boat = smallBoat();
  const fuse = { ratingA: 10, fromSourceM: 0.1 };
  return smallBoat({
    items: [
      ...boat.items,
      item('VHF2', 'vhf', null, { position: P(9, 2) }),
      item('A2', 'whip', 'arch'),
      item('BAT2', 'bank', 'locker'),
    ],
    runs: [...boat.runs, run('W4', 'VHF2.ant', 'A2.rf')],
    feeds: [
      ...boat.feeds.map((each) => ({ ...each, fuse, lengthM: 1 })),
      feed('F4', 'BAT2', 'VHF2', { fuse, lengthM: 1 }),
    ],
    dataLinks: [...boat.dataLinks, link('D3', 'BUS', 'VHF2')],
  });
}

const boat = goodBoat();
const withFacts = (id: string, facts: ItemFacts, base = boat): Project => ({
  ...base,
  items: base.items.map((each) => (each.id === id ? { ...each, facts: { ...each.facts, ...facts } } : each)),
});
const withRunFacts = (id: string, facts: RunFacts, more: object = {}): Project => ({
  ...boat,
  runs: boat.runs.map((each) => (each.id === id ? { ...each, ...more, facts } : each)),
});
const plus = (...items: Item[]): Project => ({ ...boat, items: [...boat.items, ...items] });
const measured = (kind: Measurement['kind'], value: number, more: object = {}): Measurement =>
  measurementSchema.parse({
    id: `${kind}${value}`,
    subject: { kind: 'item', id: 'VHF' },
    kind,
    value,
    frequencyMhz: 156.8,
    date: '2025-05-01',
    ...more,
  });
const longRun = (metres: number): Project => ({
  ...boat,
  runs: boat.runs.map((each) => (each.id === 'W3' ? { ...each, measuredLengthM: metres } : each)),
});

const without = (project: Project, ...ids: string[]): Project => ({
  ...project,
  items: project.items.filter((each) => !ids.includes(each.id)),
});

/** A second AIS with its antenna on the arch, so far to port of the voice antenna there. */
function secondAis(yM: number): Project {
  return {
    ...plus(item('A3', 'whip', null, { position: P(11, 4, yM) }), item('AIS2', 'ais', null)),
    runs: [...boat.runs, run('W7', 'AIS2.ant', 'A3.rf')],
  };
}

const withFigure = (id: string, key: string, value: number, base = boat): Project => ({
  ...base,
  items: base.items.map((each) =>
    each.id === id
      ? { ...each, overrides: { figures: { [key]: figure(value, 0, 'assumed', 'test') }, traits: {} } }
      : each,
  ),
});

/** The good boat with one more set of the catalogue on an antenna of its own. */
function withSet(setId: string, antennaId: string, port: string, metres: number, facts: ItemFacts = {}): Project {
  return {
    ...plus(item('SET', setId, 'hut'), item('ANT', antennaId, null, { position: P(10, 3), facts })),
    runs: [...boat.runs, run('W7', `SET.${port}`, 'ANT.feed', { measuredLengthM: metres })],
  };
}

/** An HF set with its tuner and a whip that somebody sits beside. */
function hfBesidePeople(): Project {
  const hf = withSet('radio-mf-hf-150w', 'antenna-hf-whip-7m', 'rf', 5, { nearestPersonM: 1 });
  return {
    ...hf,
    items: [...hf.items, item('ATU', 'tuner-hf', 'locker')],
    runs: [...boat.runs, run('W7', 'SET.rf', 'ATU.set'), run('W8', 'ATU.antenna', 'ANT.feed', { measuredLengthM: 1 })],
  };
}

/** A second AIS with its antenna half a metre abaft the mast, half-way up. */
function besideMast(): Project {
  return {
    ...plus(item('A3', 'whip', null, { position: P(5.5, 8) }), item('AIS2', 'ais', null)),
    runs: [...boat.runs, run('W7', 'AIS2.ant', 'A3.rf')],
  };
}

const fused = (ratingA: number, fromSourceM: number): Project => ({
  ...boat,
  feeds: boat.feeds.map((each) => ({ ...each, fuse: { ratingA, fromSourceM } })),
});

/** For each rule a boat it remarks on; the good boat is the one it must leave alone. */
const BREACHES: Readonly<Record<string, Project>> = {
  'shared-single-point': smallBoat(),
  'ais-no-fix': withFacts('AIS', { overhead: 'carbon' }),
  'dsc-no-position': { ...boat, dataLinks: [] },
  'beacon-registration': withFacts('EPIRB', { registration: 'another-owner' }),
  'emergency-antenna-missing': smallBoat(),
  'emergency-antenna-unusable': plus(
    item('EM', 'emergency', 'locker', { facts: { leadLengthM: 1, leadConnector: 'bnc' } }),
  ),
  'feed-unfused': { ...boat, feeds: boat.feeds.map((each) => ({ ...each, fuse: null })) },
  'feeder-loss': longRun(60),
  'feeder-measured': { ...boat, measurements: [measured('open-end-vswr', 2.2)] },
  'vswr-masked': { ...longRun(80), measurements: [measured('vswr', 1.2)] },
  'vswr-high': { ...boat, measurements: [measured('vswr', 3)] },
  'volt-drop': { ...boat, feeds: boat.feeds.map((each) => ({ ...each, lengthM: 12 })) },
  'measured-sag': { ...boat, measurements: [measured('supply-idle-v', 12.7), measured('supply-transmit-v', 11.5)] },
  'batteries-low': without(boat, 'BAT2'),
  'flood-takes-all': { ...without(boat, 'BAT2'), feeds: [...boat.feeds.slice(0, -1), feed('F4', 'BRK', 'VHF2')] },
  'joint-wet': plus(item('J', 'joint', 'masthead', { facts: { seal: 'tape' } })),
  'bend-radius': withRunFacts('W3', { bendRadiusMm: 40 }),
  'surplus-cable': withRunFacts('W3', { coiledM: 2 }),
  'hf-insulator-low': withFacts('A2', { lowerInsulatorAboveDeckM: 1 }),
  'hf-lead-in-inside': withRunFacts('W3', { insideMetalM: 2 }),
  'hf-earth': withFacts('SP', { earthTo: 'seacock' }),
  'ais-near-metal': withFacts('A1', { nearestMetalM: 0.5 }),
  'pole-shadow': withFacts('A2', { shadowPoleDiameterM: 0.1, shadowPoleDistanceM: 0.9 }),
  'satellite-no-sky': plus(item('A4', 'patch', 'arch', { facts: { overhead: 'metal' } })),
  'position-source-no-fix': withFacts('GPS', { overhead: 'metal' }),
  'metal-mount': { ...withFacts('A1', { mount: 'metal' }), boat: { ...boat.boat, hullMaterial: 'steel' } },
  'unknown-part': plus(item('X', 'nobody-knows', null)),
  'run-unsupported': withRunFacts('W3', { supported: false }),
  'bundle-gap': withRunFacts('W3', { powerCableGapMm: 20 }),
  'dead-cables': { ...boat, runs: [...boat.runs, run('W9', 'VHF.ant', 'A2.rf', { status: 'remove' })] },
  'led-near-antenna': plus(item('L1', 'lamp', 'masthead')),
  'folded-whip': withFacts('A1', { foldsDown: true }),
  'duplicate-label': withRunFacts('W4', {}, { labelText: 'W3' }),
  'undated-record': { ...boat, measurements: [measured('vswr', 1.2, { date: null })] },
  'set-unconnected': plus(item('VHF3', 'vhf', null)),
  'beacon-missing': without(boat, 'EPIRB'),
  'lightning-multihull': { ...boat, boat: { ...boat.boat, kind: 'catamaran' } },
  'person-near-antenna': withFacts('A1', { nearestPersonM: 0.6 }),
  'antenna-spacing': secondAis(2.5),
  'antenna-too-near': secondAis(1.2),
  'transmit-rating': {
    ...boat,
    items: boat.items.map((each) =>
      each.id === 'SP' ? { ...each, overrides: { figures: {}, traits: { transmitRated: false } } } : each,
    ),
  },
  'cable-impedance': withRunFacts('W3', {}, { cableId: 'tv-cable' }),
  'connector-band': {
    ...plus(item('SAT', 'terminal', 'hut'), item('A4', 'patch', 'arch')),
    runs: [...boat.runs, run('W8', 'SAT.ant', 'A4.rf', { connectorFromId: 'plug', measuredLengthM: 1 })],
  },
  'repeater-feedback': {
    ...plus(
      item('CEL', 'repeater', 'hut'),
      item('C1', 'cell-antenna', null, { position: P(8, 3) }),
      item('C2', 'cell-antenna', null, { position: P(8, 2) }),
    ),
    runs: [...boat.runs, run('W5', 'CEL.out', 'C1.rf'), run('W6', 'CEL.in', 'C2.rf')],
  },
  'fuse-too-large': fused(100, 0.1),
  'fuse-too-far': fused(10, 5),
  'fuse-too-small': fused(1, 0.1),
  'radar-at-eye-height': plus(
    item('RAD', 'radar', null, { position: P(10, 3), facts: { standingEyeZM: 3.1, nearestPersonM: 1.9 } }),
  ),
  'antenna-claim': withFigure('A1', 'gainDbi', 9),
  'gnss-gain': withSet('radio-gnss-receiver', 'antenna-gnss-active', 'gnss', 120),
  'outside-method': withFigure(
    'SET',
    'frequencyMhz',
    3500,
    withSet('radio-cellular-router', 'antenna-cellular-omni', 'rf', 2),
  ),
  'own-signal-strong': secondAis(0.3),
  'person-near-hf': hfBesidePeople(),
  'person-near-terminal': withSet('radio-l-band-messenger', 'antenna-l-band-passive', 'rf', 1, {
    nearestPersonM: 0.01,
  }),
  'satellite-line': withSet('radio-l-band-messenger', 'antenna-l-band-passive', 'rf', 60),
  'whip-beside-mast': besideMast(),
  'long-range-one-supply': {
    ...plus(
      item('SAT', 'terminal', 'hut', { overrides: { figures: {}, traits: { ownBattery: false } } }),
      item('SAT2', 'terminal', 'hut'),
      item('A4', 'patch', 'arch'),
    ),
    runs: [...boat.runs, run('W8', 'SAT.ant', 'A4.rf', { measuredLengthM: 1 })],
    feeds: [...boat.feeds, feed('F8', 'BRK', 'SAT', { lengthM: 1 })],
  },
};

describe('rules', () => {
  it('leaves a good boat alone', () => {
    expect(findingsOf(boat).map((finding) => `${finding.key}: ${finding.title}`)).toEqual([]);
  });

  it('has a breach here for every rule', () => {
    expect(Object.keys(BREACHES).sort()).toEqual(RULES.map((rule) => rule.id).sort());
  });

  it.each(Object.keys(BREACHES))('%s remarks on its breach', (ruleId) => {
    const project = BREACHES[ruleId] ?? boat;
    expect(findingsOf(project).map((finding) => finding.ruleId)).toContain(ruleId);
  });

  it('says in every finding what, against which limit, whose rule and what to do, in plain sentences', () => {
    for (const project of Object.values(BREACHES)) {
      for (const finding of findingsOf(project)) {
        expect(finding.title).not.toBe('');
        for (const text of [finding.measured, finding.limit, finding.action]) {
          const words = formatText(text, METRIC_PREFERENCES);
          expect(words, finding.key).toMatch(/^\S.*[.!]$/);
          expect(words, finding.key).not.toMatch(/NaN|undefined|null|Infinity| {2}|\.\./);
          expect(words, finding.key).not.toMatch(/seaworthy|complian/i);
        }
        expect(finding.authority.name.length).toBeGreaterThan(10);
        expect(finding.subjects.length).toBeGreaterThan(0);
      }
    }
  });
});

describe('audit', () => {
  const bad = withFacts(
    'AIS',
    { overhead: 'carbon' },
    withFacts('A1', { foldsDown: true, nearestMetalM: 0.5 }, smallBoat()),
  );

  it('lists the gravest first and numbers each class from one', () => {
    const findings = findingsOf(bad);
    const severities = findings.map((finding) => finding.severity);
    expect(severities).toEqual([...severities].sort());
    for (const severity of ['A', 'B', 'C']) {
      const marks = findings.filter((finding) => finding.severity === severity).map((finding) => finding.mark);
      expect(marks).toEqual(marks.map((_, index) => `${severity}${index + 1}`));
    }
  });

  it('keeps an overruled finding, with its reason and its mark', () => {
    const key = 'ais-no-fix:AIS';
    const before = findingsOf(bad).find((finding) => finding.key === key);
    const overruled = findingsOf({
      ...bad,
      findingOverrides: [{ findingKey: key, reason: 'Mended yesterday', by: 'Owner' }],
    });
    const after = overruled.find((finding) => finding.key === key);
    expect(before?.overruled).toBeNull();
    expect(after).toMatchObject({ mark: before?.mark, overruled: { reason: 'Mended yesterday', by: 'Owner' } });
    expect(overruled).toHaveLength(findingsOf(bad).length);
  });

  it('gives every finding a key of its own', () => {
    const keys = findingsOf(bad).map((finding) => finding.key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('classes a coil by what it costs', () => {
    const severityOf = (coiledM: number) =>
      findingsOf(withRunFacts('W3', { coiledM }, { measuredLengthM: 30 })).find(
        (each) => each.ruleId === 'surplus-cable',
      )?.severity;
    expect(severityOf(2)).toBe('C');
    expect(severityOf(12)).toBe('B');
  });

  it('takes two metres between a voice antenna and an AIS antenna on one level as the least', () => {
    const apart = (yM: number) => findingsOf(secondAis(yM)).map((each) => each.ruleId);
    expect(apart(1.2)).toContain('antenna-too-near');
    expect(apart(2.5)).not.toContain('antenna-too-near');
    expect(apart(2.5)).toContain('antenna-spacing');
    expect(apart(12)).not.toContain('antenna-spacing');
  });
});

describe('keepClearM', () => {
  it.each([
    // Worked values in the trade: 25 W and 3 dBi at 2 W/m2 by the formula; a maker's manual prints 3 m for 9 dBi, rounded up.
    [25, 3, 2, 1.41],
    [25, 9, 2, 2.81],
    // A satellite maker's manual: 54.3 dBW EIRP at 10 W/m2, printed 47 m, rounded up.
    [10 ** 5.43, 0, 10, 46.28],
  ])('%d W, %d dBi at %d W/m2', (powerW, gainDbi, limit, metres) => {
    expect(keepClearM(powerW, gainDbi, limit)).toBeCloseTo(metres, 1);
  });

  it('refuses a limit of nothing', () => {
    expect(() => keepClearM(25, 3, 0)).toThrow(RangeError);
  });
});

describe('docs/rules.md', () => {
  it('lists every rule with its class', () => {
    const doc = readFileSync(new URL('../../../docs/rules.md', import.meta.url), 'utf8').replace(/ +/g, ' ');
    const missing = RULES.filter((rule) => !doc.includes(`| \`${rule.id}\` | ${rule.severity} | ${rule.summary} |`));
    expect(missing.map((rule) => rule.id)).toEqual([]);
  });

  it('names no rule twice', () => {
    expect(new Set(RULES.map((rule) => rule.id)).size).toBe(RULES.length);
  });
});
