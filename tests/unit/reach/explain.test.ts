import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { newProject } from '../../../core/model/defaults.ts';
import { figure } from '../../../core/model/figure.ts';
import { itemSchema, type Project, runSchema } from '../../../core/model/project.ts';
import { explainRange } from '../../../core/reach/explain.ts';
import { levelCurve } from '../../../core/reach/levelCurve.ts';
import { AT_REST, type RangeResult, type TrialState } from '../../../core/reach/types.ts';

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}

const DEMOS = ['brannoch-tern', 'pelluna', 'vessarine'].map((name) => [name, demo(name)] as const);
const states: fc.Arbitrary<TrialState> = fc.record({
  heelDeg: fc.integer({ min: -45, max: 45 }),
  rollDeg: fc.integer({ min: 0, max: 30 }),
  bearingDeg: fc.integer({ min: 0, max: 359 }),
  power: fc.constantFrom('full', 'low'),
  timePercent: fc.constantFrom(50, 90, 99),
});

/** A sloop with one set of the catalogue on an antenna at the masthead, cable without loss worth naming. */
function boatWith(setId: string, antennaId: string, zM: number, yM = 0): Project {
  const base = newProject({
    name: 'Test',
    kind: 'sloop',
    loaM: 12,
    beamM: 4,
    draughtM: 2,
    airDraughtM: 18,
    freeboardM: 1.2,
  });
  return {
    ...base,
    items: [
      itemSchema.parse({ id: 'set', tag: 'SET', partId: setId, position: { xM: 6, yM: 0, zM: 1 } }),
      itemSchema.parse({ id: 'ant', tag: 'ANT', partId: antennaId, position: { xM: 6, yM, zM } }),
    ],
    runs: [
      runSchema.parse({
        id: 'w1',
        number: 'W1',
        cableId: 'coax-400-class',
        from: { itemId: 'set', portId: 'rf' },
        to: { itemId: 'ant', portId: 'feed' },
        measuredLengthM: 1,
      }),
    ],
  };
}

function rangeTo(project: Project, stationId: string): RangeResult {
  const range = assess(project).ranges.find((each) => each.stationId === stationId);
  if (!range) throw new Error(`No range to ${stationId}.`);
  return range;
}
const explained = (project: Project, stationId: string, state: Partial<TrialState> = {}) =>
  explainRange(project, assess(project).paths, rangeTo(project, stationId), { ...AT_REST, ...state });

describe.each(DEMOS)('%s', (_, project) => {
  const { paths, ranges } = assess(project);

  it('at rest explains the very range that assess gives', () => {
    expect(ranges.length).toBeGreaterThan(3);
    for (const range of ranges) expect(explainRange(project, paths, range).range).toEqual(range);
  });

  it('has lines that add up to what may lie between the antennas, both ways, in any state', () => {
    fc.assert(
      fc.property(states, fc.nat(ranges.length - 1), (state, index) => {
        const range = ranges[index];
        if (!range) return;
        const { transmit, receive, range: tried } = explainRange(project, paths, range, state);
        const ways = [transmit, receive].filter((way) => way !== null);
        expect(ways.length).toBeGreaterThan(0);
        for (const { lines, maxLossDb } of ways)
          expect(lines.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(maxLossDb, 9);
        // The weaker way decides.
        expect(tried.maxLossTypicalDb).toBe(Math.min(...ways.map(({ maxLossDb }) => maxLossDb)));
        expect(tried.typical.nominalKm).toBeGreaterThanOrEqual(tried.dependable.nominalKm);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('owns every part of the width of the band, and the band is the root of the squares', () => {
    for (const range of ranges) {
      const { uncertainty, bandDb } = explainRange(project, paths, range);
      expect(uncertainty.reduce((sum, { sharePercent }) => sum + sharePercent, 0)).toBeCloseTo(100, 6);
      expect(Math.hypot(...uncertainty.map(({ toleranceDb }) => toleranceDb))).toBeCloseTo(bandDb, 9);
      const shares = uncertainty.map(({ sharePercent }) => sharePercent);
      expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    }
  });

  it('states a source and a sum for every line', () => {
    for (const range of ranges) {
      const { transmit, receive } = explainRange(project, paths, range);
      for (const line of [...(transmit?.lines ?? []), ...(receive?.lines ?? [])]) {
        expect(line.source, line.key).not.toBe('');
        expect(line.formula.length, line.key).toBeGreaterThan(0);
      }
    }
  });
});

describe('what is tried', () => {
  const whip = boatWith('radio-vhf-fixed-25w-dsc', 'antenna-vhf-whip-3db', 18);
  const nine = boatWith('radio-vhf-fixed-25w-dsc', 'antenna-vhf-collinear-9db', 4);
  const km = (project: Project, state: Partial<TrialState>) =>
    explained(project, 'like-yacht', state).range.typical.nominalKm;

  it('heel abeam costs a half-wave whip little and a narrow one nearly all (the handbook: 0.8 and 15 to 25 dB at 20 degrees)', () => {
    const lossDb = (project: Project) =>
      explained(project, 'like-yacht').range.maxLossTypicalDb -
      explained(project, 'like-yacht', { heelDeg: 20, bearingDeg: 90 }).range.maxLossTypicalDb;
    expect(lossDb(whip)).toBeGreaterThan(0.6);
    expect(lossDb(whip)).toBeLessThan(1);
    expect(lossDb(nine)).toBeGreaterThan(15);
    expect(lossDb(nine)).toBeLessThan(25);
  });

  it('ahead the same heel costs polarisation only: 20 log cos 20°, 0.54 dB', () => {
    const lossDb =
      explained(nine, 'like-yacht').range.maxLossTypicalDb -
      explained(nine, 'like-yacht', { heelDeg: 20, bearingDeg: 0 }).range.maxLossTypicalDb;
    expect(lossDb).toBeCloseTo(0.54, 2);
  });

  it('lowers a masthead by the cosine and lifts what stands out to windward', () => {
    const heightM = (project: Project, heelDeg: number) =>
      explained(project, 'like-yacht', { heelDeg }).range.ownHeightM;
    expect(heightM(whip, 30)).toBeCloseTo(heightM(whip, 0) * Math.cos(Math.PI / 6), 6);
    const port = boatWith('radio-vhf-fixed-25w-dsc', 'antenna-vhf-whip-3db', 2, 1.5);
    expect(heightM(port, 20)).toBeGreaterThan(heightM(port, 0));
    expect(heightM(port, -20)).toBeLessThan(heightM(port, 0));
  });

  it('low power, more of the time and more roll never reach farther', () => {
    expect(km(whip, { power: 'low' })).toBeLessThan(km(whip, {}));
    expect(km(whip, { timePercent: 90 })).toBeLessThan(km(whip, {}));
    expect(km(whip, { timePercent: 99 })).toBeLessThan(km(whip, { timePercent: 90 }));
    for (const rollDeg of [5, 10, 20, 30])
      expect(km(nine, { rollDeg })).toBeLessThanOrEqual(km(nine, { rollDeg: rollDeg - 5 }));
  });

  it('heel either way is alike for what stands amidships', () => {
    expect(km(whip, { heelDeg: 25 })).toBeCloseTo(km(whip, { heelDeg: -25, bearingDeg: 270 }), 9);
  });

  it.each([{ heelDeg: 61 }, { heelDeg: Number.NaN }, { rollDeg: -1 }, { bearingDeg: 361 }, { timePercent: 49 as 50 }])(
    'refuses %o',
    (state) => {
      expect(() => explained(whip, 'like-yacht', state)).toThrow(RangeError);
    },
  );

  it('refuses a range of another boat', () => {
    const { paths } = assess(nine);
    expect(() => explainRange(nine, paths, { ...rangeTo(nine, 'like-yacht'), stationId: 'nobody' })).toThrow(
      RangeError,
    );
  });
});

describe('reception', () => {
  const withDevice = (deviceId: string, from: string, to: string): Project => {
    const plain = boatWith('radio-ais-receiver', 'antenna-ais-whip-3db', 18);
    const device = itemSchema.parse({ id: 'dev', tag: 'DEV', partId: deviceId, position: { xM: 6, yM: 0, zM: 17 } });
    const [run] = plain.runs;
    if (!run) throw new Error('No run.');
    return {
      ...plain,
      items: [...plain.items, device],
      runs: [
        { ...run, to: { itemId: 'dev', portId: to } },
        {
          ...run,
          id: 'w2',
          number: 'W2',
          from: { itemId: 'dev', portId: from },
          to: { itemId: 'ant', portId: 'feed' },
        },
      ],
    };
  };
  const allowed = (project: Project) => explained(project, 'ship-bridge').receive?.maxLossDb ?? 0;

  it('a perfect splitter costs exactly its split', () => {
    const project = withDevice('splitter-hybrid-2-way', 'antenna', 'a');
    const perfect = (lossDb: number): Project => ({
      ...project,
      items: project.items.map((item) =>
        item.id === 'dev'
          ? { ...item, overrides: { figures: { lossDb: figure(lossDb, 0, 'assumed', 'test') }, traits: {} } }
          : item,
      ),
    });
    expect(allowed(perfect(0)) - allowed(perfect(10 * Math.log10(2)))).toBeCloseTo(10 * Math.log10(2), 9);
  });

  it('a preamplifier at the antenna wins back what the cable behind it takes, and never more than its noise allows', () => {
    const cable = (project: Project, metres: number): Project => ({
      ...project,
      runs: project.runs.map((run) => (run.id === 'w1' ? { ...run, measuredLengthM: metres } : run)),
    });
    const plain = boatWith('radio-ais-receiver', 'antenna-ais-whip-3db', 18);
    const amplified = withDevice('preamplifier-vhf-receive', 'antenna', 'set');
    // 100 m of this cable take about 5 dB; behind 15 dB of gain much of that is gone, the more the better the receiver.
    const lost = allowed(plain) - allowed(cable(plain, 100));
    expect(lost).toBeGreaterThan(4.5);
    expect(allowed(amplified) - allowed(cable(amplified, 100))).toBeLessThan(lost / 2);
    expect(allowed(cable(amplified, 100))).toBeGreaterThan(allowed(plain));
  });

  it('says what noise from outside costs beside the margin, and does not take it off', () => {
    const plain = boatWith('radio-ais-receiver', 'antenna-ais-whip-3db', 18);
    const noisy: Project = {
      ...plain,
      settings: { ...plain.settings, conditions: { ...plain.settings.conditions, noise: 'city' } },
    };
    const [calm, loud] = [explained(plain, 'ship-bridge'), explained(noisy, 'ship-bridge')];
    expect(loud.range.typical).toEqual(calm.range.typical);
    expect(loud.noise?.desenseDb ?? 0).toBeGreaterThan(calm.noise?.desenseDb ?? 0);
    expect(loud.noise?.effectiveDbm ?? 0).toBeGreaterThan(calm.noise?.effectiveDbm ?? 0);
  });
});

describe('services over the sea', () => {
  it('an HF set on the marine VHF channels is one more VHF transmitter, with its own power and loss', () => {
    const plain = boatWith('radio-hf-vhf-25w', 'antenna-vhf-whip-3db', 18);
    const project = { ...plain, runs: plain.runs.map((run) => ({ ...run, from: { itemId: 'set', portId: 'vhf' } })) };
    const fixed = boatWith('radio-vhf-fixed-25w', 'antenna-vhf-whip-3db', 18);
    expect(rangeTo(project, 'like-yacht').typical.nominalKm).toBe(rangeTo(fixed, 'like-yacht').typical.nominalKm);
    expect(assess(project).hf).toEqual([]);
    const voice = assess(project).redundancy.matrix[0]?.states.find(({ serviceId }) => serviceId === 'voice-fixed');
    expect(voice?.grade).toBe('full');
  });

  it('ranges mobile data and Wi-Fi to stations that have them, and says what a telephone alone would do', () => {
    const router = boatWith('radio-cellular-router', 'antenna-cellular-omni', 18);
    const { range, withoutKm } = explained(router, 'mobile-mast');
    expect(range.service).toBe('cellular');
    expect(range.typical.nominalKm).toBeGreaterThan(withoutKm?.typical ?? Number.POSITIVE_INFINITY);
    expect(assess(router).ranges.map(({ stationId }) => stationId)).toEqual(['mobile-mast']);
    const bridge = boatWith('radio-wifi-bridge', 'antenna-wifi-omni', 18);
    expect(assess(bridge).ranges.map(({ stationId, service }) => [stationId, service])).toEqual([
      ['harbour-wifi', 'wifi'],
    ]);
  });

  it('a beacon is homed on by aircraft and ships, and an AIS device of a person is seen by those with AIS', () => {
    const base = boatWith('radio-vhf-fixed-25w-dsc', 'antenna-vhf-whip-3db', 18);
    const found = (partId: string) => {
      const item = itemSchema.parse({ id: 'own', tag: 'OWN', partId, position: { xM: 6, yM: 0, zM: 1 } });
      return assess({ ...base, items: [...base.items, item] }).ranges.filter(({ itemId }) => itemId === 'own');
    };
    expect(new Set(found('beacon-406-manual').map(({ service }) => service))).toEqual(new Set(['homing']));
    const person = found('mob-ais');
    expect(person.every(({ service, limitedBy }) => service === 'ais' && limitedBy === 'transmit')).toBe(true);
    expect(person.map(({ stationId }) => stationId)).toContain('ship-bridge');
  });
});

describe('level curve', () => {
  it('has no step above half a decibel anywhere, whatever is tried, and meets both thresholds at its ranges', () => {
    for (const [, project] of DEMOS) {
      const { paths, ranges } = assess(project);
      for (const range of ranges) {
        const state = { ...AT_REST, heelDeg: 15, timePercent: 90 } as const;
        const curve = levelCurve(project, paths, range, { state, points: 1500, fromKm: 0.5, toKm: 120 });
        const levels = curve.points.map(({ levelDbm }) => levelDbm);
        // From 80 m to 80 m further the level falls smoothly: what is left over the trend of its neighbours is a step.
        for (let i = 1; i + 2 < levels.length; i += 1) {
          const [before, here, next, after] = [
            levels[i - 1] ?? 0,
            levels[i] ?? 0,
            levels[i + 1] ?? 0,
            levels[i + 2] ?? 0,
          ];
          expect(Math.abs(here - next - (before - here + (next - after)) / 2)).toBeLessThan(0.5);
        }
        const at = (km: number) =>
          levelCurve(project, paths, range, { state, points: 2, fromKm: km, toKm: km + 1 }).points[0]?.levelDbm ?? 0;
        if (curve.range.typical.nominalKm > 0.01 && curve.range.typical.nominalKm < 399)
          expect(at(curve.range.typical.nominalKm)).toBeCloseTo(curve.sensitivityDbm, 1);
      }
    }
  });
});
