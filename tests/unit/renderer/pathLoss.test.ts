import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { setRun } from '../../../core/edit/runs.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import type { FeedResult } from '../../../core/power/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import { compareCables } from '../../../renderer/panels/pathLoss/cables.ts';
import { elementLengthM, elementSum, numbered } from '../../../renderer/panels/pathLoss/elements.ts';
import { bareNumber, megahertz, percent, watts } from '../../../renderer/panels/pathLoss/figures.ts';
import { measuredCheck, measuredOutcome, meterRows, vswrNote } from '../../../renderer/panels/pathLoss/meter.ts';
import { headline, pathName, pathsTouched, switchNote, worstPath } from '../../../renderer/panels/pathLoss/paths.ts';
import { conductorText, dropText, isDropOver, protectionText } from '../../../renderer/panels/pathLoss/supply.ts';
import { namedElements, taperSteps } from '../../../renderer/panels/pathLoss/taper.ts';
import { smallProject } from './canvasFixture.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES);

function onlyPath(project: Project): PathBudget {
  const [path] = assess(project).paths;
  if (!path) throw new Error('the fixture has a path');
  return path;
}

/** The fixture's run at a length that the loss can be reckoned by hand: 1.6 sqrt(156.8) + 0.007 x 156.8 = 21.13 dB/100 m. */
const project = setRun(smallProject(), 'w', { measuredLengthM: 20 });
const path = onlyPath(project);

describe('figures as people say them', () => {
  it('shows powers, carriers and shares no finer than needed', () => {
    expect([25, 7.354, 0.58, 0.0231, 129.48].map((value) => said([watts(value)]))).toEqual([
      '25 W',
      '7.4 W',
      '0.58 W',
      '0.023 W',
      '129 W',
    ]);
    expect([156.8, 162, 1575.42].map((value) => said([megahertz(value)]))).toEqual([
      '156.8 MHz',
      '162 MHz',
      '1575.42 MHz',
    ]);
    expect([70.58, 0.2, 99.8].map((value) => said([percent(value)]))).toEqual(['71 %', '0.2 %', '99.8 %']);
  });

  it('drops the unit but keeps the reader’s choice of it', () => {
    expect(bareNumber(18.52, 'km', METRIC_PREFERENCES, 1)).toBe('10.0');
    expect(bareNumber(18.52, 'km', { ...METRIC_PREFERENCES, distance: 'km', decimal: ',' }, 1)).toBe('18,5');
  });
});

describe('which path and what became of it', () => {
  it('names a path by its ends and carrier', () => {
    expect(said(pathName(project, path))).toBe('VHF-1 to A1, voice 156.8 MHz');
  });

  it('says the outcome in one sentence with the limit', () => {
    const { text, verdict } = headline(path, 2.218);
    expect(path.lossDb).toBeCloseTo(4.226 + 0.036, 1);
    expect(said(text)).toMatch(
      /^Your 25 W arrives as 9\.\d W: 4\.\d\d dB, 6\d % lost on the way; the limit is 40 %\.$/,
    );
    expect(verdict).toBe('over');
    expect(headline(path, 6).verdict).toBe('within');
  });

  it('speaks of dB alone for a receiver', () => {
    const { text, verdict } = headline({ ...path, txPowerW: null, wattsAtAntenna: null }, 2.218);
    expect(said(text)).toMatch(/^Receive only: the signal loses 4\.\d\d dB/);
    expect(said(text)).not.toContain('W');
    expect(verdict).toBeNull();
  });

  it('begins with the transmitting path that loses most, and follows the selection', () => {
    const receiver = { ...path, id: 'r', lossDb: 30, txPowerW: null, radioId: 'spare' };
    const short = { ...path, id: 's', lossDb: 1 };
    expect(worstPath([receiver, short, path])?.id).toBe(path.id);
    const wet = { ...short, id: 'wet', measuredLossDb: path.lossDb + 1 };
    expect(worstPath([path, wet])?.id).toBe('wet');
    expect(worstPath([receiver])?.id).toBe('r');
    expect(worstPath([])).toBeNull();
    expect(pathsTouched(project, [receiver, path], [{ kind: 'item', id: 'whip' }]).map(({ id }) => id)).toEqual([
      path.id,
      'r',
    ]);
    expect(pathsTouched(project, [receiver, path], [{ kind: 'item', id: 'spare' }]).map(({ id }) => id)).toEqual(['r']);
    expect(pathsTouched(project, [path], [{ kind: 'place', id: 'table' }])).toEqual([]);
  });

  it('says which switch has to be set', () => {
    expect(switchNote(project, path)).toBeNull();
    expect(switchNote(project, { ...path, switchIds: ['spare'] })).toBe('after setting VHF-2');
  });
});

describe('elements', () => {
  it('gives a cable’s sum in the reader’s units', () => {
    const cable = path.elements.find(({ kind }) => kind === 'cable');
    if (!cable) throw new Error('the path has a cable');
    expect(elementLengthM(project, cable)).toBe(20);
    expect(said(elementSum(project, cable, 156.8, METRIC_PREFERENCES))).toBe(
      '20.0 m × 21.1 dB/100 m at 156.8 MHz = 4.23 dB',
    );
    const feet = { ...METRIC_PREFERENCES, length: 'ft' as const, decimal: ',' as const };
    expect(formatText(elementSum(project, cable, 156.8, feet), feet)).toBe(
      '65,6 ft × 6,4 dB/100 ft at 156,8 MHz = 4,23 dB',
    );
  });

  it('numbers elements of the same name apart', () => {
    const [element] = path.elements;
    if (!element) throw new Error('the path has elements');
    const keys = numbered([element, element]).map(({ key }) => key);
    expect(new Set(keys).size).toBe(2);
  });

  it('draws the band to scale, unbroken from the whole power to what is left', () => {
    const lengthsM = path.elements.map((element) => elementLengthM(project, element));
    const steps = taperSteps(path.elements, lengthsM, { left: 10, width: 300, height: 100 });
    expect(steps[0]?.heightIn).toBeCloseTo(100, 6);
    expect(steps.at(-1)?.heightOut).toBeCloseTo(100 * 10 ** (-path.lossDb / 10), 6);
    steps.slice(1).forEach((step, i) => {
      const before = steps[i];
      expect(step.left).toBeCloseTo((before?.left ?? 0) + (before?.width ?? 0), 6);
      expect(step.heightIn).toBeCloseTo(before?.heightOut ?? 0, 6);
    });
    const last = steps.at(-1);
    expect((last?.left ?? 0) + (last?.width ?? 0)).toBeCloseTo(310, 6);
  });

  it('names the elements that matter, most first', () => {
    const cable = path.elements.findIndex(({ kind }) => kind === 'cable');
    expect(namedElements(path.elements, 3)[0]).toBe(cable);
    expect(namedElements(path.elements, 0)).toEqual([]);
  });
});

describe('the meter', () => {
  const feederDb = path.elements.filter(({ kind }) => kind !== 'mismatch').reduce((sum, each) => sum + each.lossDb, 0);

  it('says what a missing antenna would read through the feeder', () => {
    // G = 10^(-L/10) with the end open, VSWR = (1 + G) / (1 - G).
    const g = 10 ** (-feederDb / 10);
    const missing = ((1 + g) / (1 - g)).toFixed(2);
    expect(said(vswrNote(path) ?? [])).toContain(`even a missing antenna would read ${missing}`);
  });

  it('keeps silent where the reading does prove something', () => {
    expect(vswrNote(onlyPath(setRun(project, 'w', { measuredLengthM: 2 })))).toBeNull();
    expect(vswrNote({ ...path, service: 'mf-hf' })).toBeNull();
    expect(vswrNote({ ...path, txPowerW: null })).toBeNull();
  });

  it('tells unexplained loss from what the tolerance allows', () => {
    expect(measuredCheck(path)).toBeNull();
    expect(measuredCheck({ ...path, measuredLossDb: feederDb })?.isUnexplained).toBe(false);
    const bad = { ...path, measuredLossDb: feederDb + 3 };
    expect(measuredCheck(bad)?.isUnexplained).toBe(true);
    expect(said(measuredCheck(bad)?.text ?? [])).toContain('3.00 dB unexplained');
    const outcome = measuredOutcome(bad, 2.218);
    expect(outcome?.isOver).toBe(true);
    const arriving = (25 * 10 ** (-(path.lossDb + 3) / 10)).toFixed(1);
    expect(said(outcome?.text ?? [])).toContain(`only ${arriving} W arrives`);
    expect(measuredOutcome(path, 2.218)).toBeNull();
  });

  it('lists the readings kept under what lies on the path, and no others', () => {
    const reading = {
      id: 'm-1',
      subject: { kind: 'item' as const, id: 'vhf' },
      kind: 'open-end-vswr' as const,
      value: 2.2,
      frequencyMhz: null,
      date: null,
      instrument: '',
      note: '',
    };
    const rows = meterRows(
      { ...project, measurements: [reading, { ...reading, id: 'm-2', subject: { kind: 'item', id: 'spare' } }] },
      path,
      () => 'VHF-1',
    );
    expect(rows.map(({ key }) => key)).toEqual(['m-1']);
    // 10 log((2.2 + 1) / (2.2 - 1)) = 4.26 dB.
    expect(said(rows[0]?.text ?? [])).toBe('2.20, which means 4.26 dB');
  });
});

describe('the DC feed', () => {
  const feed: FeedResult = {
    feedId: 'f',
    loadId: 'vhf',
    currentA: 5.5,
    lengthM: 4,
    areaMm2: 1.5,
    dropV: 0.5,
    totalDropV: 0.96,
    totalDropPercent: 7.6,
    limitPercent: 3,
    protection: {
      present: true,
      ratingA: 25,
      fromSourceM: 0.5,
      ampacityA: 14,
      largestRatingA: 21,
      verdict: 'too-large',
    },
    smallestAreaMm2: 4,
  };

  it('says drop, limit and the smallest conductor that would do', () => {
    expect(isDropOver(feed)).toBe(true);
    expect(isDropOver({ ...feed, totalDropPercent: 3 })).toBe(false);
    expect(said(dropText(feed))).toBe('0.96 V from battery to set, 7.6 %; the limit is 3 %');
    expect(said(conductorText(feed))).toBe('1.5 mm² over 4.0 m one way; smallest that would do: 4 mm²');
    expect(said(conductorText({ ...feed, smallestAreaMm2: null }))).toContain('no listed conductor would do');
  });

  it('says in words what is wrong with the protection', () => {
    const as = (verdict: FeedResult['protection']['verdict']): string =>
      said(protectionText({ ...feed, protection: { ...feed.protection, verdict } }));
    expect(as('good')).toBe('25 A fuse or breaker');
    expect(as('too-large')).toContain('may have 21 A at most');
    expect(as('too-far')).toContain('0.5 m of wire before it');
    expect(as('missing')).toContain('not protected');
    expect(as('too-small-for-load')).toContain('will open on transmit');
  });
});

describe('other cables', () => {
  it('lists every coax for the longest run, and predicts what the edit then gives', () => {
    const comparison = compareCables(project, path, 2.218);
    expect(comparison?.run.id).toBe('w');
    const rows = comparison?.rows ?? [];
    expect(rows.map(({ runLossDb }) => runLossDb)).toEqual(rows.map((row) => row.runLossDb).sort((a, b) => a - b));
    expect(rows.filter(({ isFitted }) => isFitted).map(({ cableId }) => cableId)).toEqual(['t-coax']);
    expect(rows.some(({ cableId }) => cableId === 'lead-in-hv-single')).toBe(false);
    for (const row of rows) {
      const after = onlyPath(setRun(project, 'w', { cableId: row.cableId }));
      expect(row.pathLossDb).toBeCloseTo(after.lossDb, 9);
      expect(row.wattsAtAntenna).toBeCloseTo(after.wattsAtAntenna ?? -1, 9);
      expect(row.isWithinLimit).toBe(after.lossDb <= 2.218);
    }
  });

  it('warns of a cable of another impedance, and has nothing to compare without a run', () => {
    const rows = compareCables(project, path, 2.218)?.rows ?? [];
    expect(rows.find(({ cableId }) => cableId === 'coax-rg-59b-u')?.caution).toContain('75 Ω');
    expect(rows.find(({ cableId }) => cableId === 'coax-rg-213-u')?.caution).toBe('');
    expect(compareCables(project, { ...path, runIds: [] }, 2.218)).toBeNull();
  });
});
