import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import type { Item, Project } from '../../../core/model/project.ts';
import { geostationaryArc } from '../../../core/reach/satellite.ts';
import { LIKE_STATION_ID } from '../../../core/reach/strongSignals.ts';
import type { GnssResult, SatelliteResult, StrongSignal } from '../../../core/reach/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';

function demo(name: string): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}
const BRANNOCH = demo('brannoch-tern');
const VESSARINE = demo('vessarine');
const PELLUNA = demo('pelluna');

const itemOf = (project: Project, tag: string): Item => {
  const item = project.items.find((each) => each.tag === tag);
  if (!item) throw new Error(`No ${tag}.`);
  return item;
};
function satellite(project: Project, tag: string): SatelliteResult {
  const result = assess(project).satellites.find(({ itemId }) => itemId === itemOf(project, tag).id);
  if (!result) throw new Error(`No satellite result of ${tag}.`);
  return result;
}
function gnss(project: Project, tag: string): GnssResult {
  const result = assess(project).gnss.find(({ itemId }) => itemId === itemOf(project, tag).id);
  if (!result) throw new Error(`No GNSS result of ${tag}.`);
  return result;
}
const said = (result: { verdict: SatelliteResult['verdict'] }): string =>
  formatText(result.verdict, METRIC_PREFERENCES);
const withRun = (project: Project, number: string, measuredLengthM: number, cableId?: string): Project => ({
  ...project,
  runs: project.runs.map((run) =>
    run.number === number ? { ...run, measuredLengthM, ...(cableId ? { cableId } : {}) } : run,
  ),
});
const withFacts = (project: Project, tag: string, facts: Item['facts']): Project => ({
  ...project,
  items: project.items.map((item) => (item.tag === tag ? { ...item, facts: { ...item.facts, ...facts } } : item)),
});

describe('satellite lines of the demo boats (scenarios: 12 m of thin cable; an antenna under carbon)', () => {
  it('Brannoch Tern: with this cable the outside antenna is no better than none', () => {
    const found = satellite(BRANNOCH, 'SAT-1');
    expect(found.isGood).toBe(false);
    expect(said(found)).toContain('no better than none');
    expect(found.change?.transmitDb).toBeLessThan(0);
    expect(found.change?.receiveDb).toBeLessThan(found.change?.transmitDb ?? 0);
    expect(found.lineLossDb).toBeGreaterThan(found.lineLimitDb ?? 0);
  });

  it('8.5 m of 400-class cable mends it: within the 3 dB a module’s guide allows', () => {
    const mended = satellite(withRun(BRANNOCH, 'W06', 8.5, 'coax-400-class'), 'SAT-1');
    expect(mended.lineLossDb).toBeLessThan(2);
    expect(mended.isGood).toBe(true);
    expect(said(mended)).not.toContain('no better than none');
  });

  it('a shorter line never sends or hears worse, and a line without loss changes by the gains alone', () => {
    let before = Number.POSITIVE_INFINITY;
    for (const metres of [0, 2, 5, 10, 20, 40]) {
      const { change, lineLossDb } = satellite(withRun(BRANNOCH, 'W06', metres), 'SAT-1');
      expect(change?.transmitDb ?? 0).toBeLessThan(before);
      before = change?.transmitDb ?? 0;
      expect(change?.transmitDb ?? 0).toBeCloseTo((change?.breakEvenLossDb ?? 0) - lineLossDb, 9);
    }
  });

  it('Vessarine: 5 dB and no sky under the carbon hardtop', () => {
    const found = satellite(VESSARINE, 'SAT-2');
    expect(found.isGood).toBe(false);
    expect(said(found)).toMatch(/carbon/);
  });

  it('a beacon is judged by what is over it alone', () => {
    const open = satellite(withFacts(BRANNOCH, 'BC-1', { overhead: 'open' }), 'BC-1');
    expect([open.pathId, open.lineLossDb, open.change]).toEqual([null, 0, null]);
    expect(open.eirpDbm).toBeCloseTo(10 * Math.log10(5000) - 2, 6);
  });

  it('is the same object while nothing it depends on changes', () => {
    const before = satellite({ ...BRANNOCH, title: 'One title' }, 'SAT-1');
    expect(satellite({ ...BRANNOCH, title: 'Another title' }, 'SAT-1')).toBe(before);
  });

  it('knows where geostationary satellites stand: 90° at the equator, 38° at 45°, none beyond 81° (geometry)', () => {
    expect(geostationaryArc(0).highestDeg).toBeCloseTo(90, 6);
    expect(geostationaryArc(45).highestDeg ?? 0).toBeCloseTo(38.2, 1);
    expect(geostationaryArc(-45).highestDeg).toBeCloseTo(geostationaryArc(45).highestDeg ?? 0, 9);
    expect(geostationaryArc(82).highestDeg).toBeNull();
    expect(() => geostationaryArc(91)).toThrow(RangeError);
  });
});

describe('GNSS leads', () => {
  it('Brannoch Tern: the antenna under the steel deck has no sky, whatever the lead', () => {
    const found = gnss(BRANNOCH, 'AIS-1');
    expect(found.isGood).toBe(false);
    expect(said(found)).toMatch(/no sky under metal/);
  });

  it('net gain is amplifier less lead, decibel for decibel, and the noise figure hardly moves', () => {
    const open = withFacts(BRANNOCH, 'A4', { overhead: 'open' });
    const at = (metres: number) => gnss(withRun(open, 'W05', metres), 'AIS-1');
    const [short, long] = [at(1), at(9)];
    const lossPerM = (at(2).netGainDb ?? 0) - (at(3).netGainDb ?? 0);
    expect((short.netGainDb ?? 0) - (long.netGainDb ?? 0)).toBeCloseTo(8 * lossPerM, 9);
    expect((long.noiseFigureDb ?? 0) - (short.noiseFigureDb ?? 0)).toBeGreaterThan(0);
    expect((long.noiseFigureDb ?? 0) - (short.noiseFigureDb ?? 0)).toBeLessThan(0.6);
    expect(long.carrierToNoiseDbHz ?? 0).toBeLessThan(short.carrierToNoiseDbHz ?? 0);
    // GPS L1 under an open sky lies at 40 to 50 dB-Hz (common practice, no source).
    expect(short.carrierToNoiseDbHz ?? 0).toBeGreaterThan(38);
    expect(short.carrierToNoiseDbHz ?? 0).toBeLessThan(52);
  });

  it('too long a lead is too little, and said with what is missing', () => {
    const found = gnss(withFacts(withRun(BRANNOCH, 'W05', 25), 'A4', { overhead: 'open' }), 'AIS-1');
    expect(found.isGood).toBe(false);
    expect(said(found)).toMatch(/too little/);
  });

  it('a set with its antenna inside has no gain to state', () => {
    const found = gnss(BRANNOCH, 'PL-1');
    expect([found.netGainDb, found.window, found.pathId]).toEqual([null, null, null]);
    expect(found.isGood).toBe(true);
  });
});

describe('too strong', () => {
  const near = (project: Project): readonly StrongSignal[] =>
    assess(project).strongSignals.filter(({ kind }) => kind === 'near-station');
  const own = (project: Project): readonly StrongSignal[] =>
    assess(project).strongSignals.filter(({ kind }) => kind === 'own-antenna');

  it('full power is too strong for the next boat farther off than low power: by 5 for 14 dB', () => {
    const clear = (powerW: number): number => {
      const signal = near(BRANNOCH).find((each) => each.toItemId === LIKE_STATION_ID && each.powerW === powerW);
      return signal?.limits.find(({ key }) => key === 'blocking')?.clearM ?? Number.NaN;
    };
    expect(clear(25) / clear(1)).toBeCloseTo(5, 6);
    expect(clear(25)).toBeGreaterThan(20);
    expect(clear(25)).toBeLessThan(1000);
  });

  it('sets on one antenna behind a splitter are no pair; Pelluna’s two whips and AIS are', () => {
    expect(own(BRANNOCH)).toEqual([]);
    const pairs = own(PELLUNA);
    expect(pairs.length).toBeGreaterThan(2);
    for (const { isolationDb, levelDbm, powerW, validity } of pairs) {
      if (validity === 'near-field') {
        expect(levelDbm).toBeNull();
        continue;
      }
      expect(isolationDb ?? 0).toBeGreaterThan(5);
      // Never stronger than what is sent less the isolation.
      expect(levelDbm ?? 0).toBeLessThanOrEqual(10 * Math.log10(powerW * 1000) - (isolationDb ?? 0) + 1e-9);
    }
  });

  it('antennas farther apart are heard less', () => {
    const moved = (xM: number): Project => ({
      ...PELLUNA,
      items: PELLUNA.items.map((item) =>
        item.tag === 'A3' ? { ...item, placeId: null, position: { ...item.position, xM } } : item,
      ),
    });
    const level = (project: Project): number =>
      Math.max(
        ...own(project)
          .filter(({ toItemId }) => toItemId === itemOf(project, 'AIS-1').id)
          .map(({ levelDbm }) => levelDbm ?? Number.NEGATIVE_INFINITY),
      );
    expect(level(moved(10.5))).toBeLessThan(level(moved(7.5)));
  });
});
