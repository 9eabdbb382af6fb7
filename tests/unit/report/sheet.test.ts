import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { setEventExcluded } from '../../../core/edit/redundancy.ts';
import { CAUTIONS, GOVERNS } from '../../../core/report/cautions.ts';
import { rated } from '../../../core/report/context.ts';
import { installSheet } from '../../../core/report/sheet.ts';
import { SECTION_IDS, type SectionId, type SheetOptions } from '../../../core/report/types.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { ASSESSMENT, BOAT, VOICE_PATH } from './boat.ts';
import { sectionOf, sectionText, sheetText, tableOf } from './sheetText.ts';

const OPTIONS: SheetOptions = { paper: 'A4', preferences: METRIC_PREFERENCES, date: '2031-04-12T22:00:00Z' };
const sheet = installSheet(BOAT, ASSESSMENT, OPTIONS);

describe('what every sheet holds', () => {
  it('has all sections in order, and none for radios of a kind this boat has none of', () => {
    const ofSomeRadios = new Set<string>([
      'hf',
      'satellites',
      'gnss',
      'strong-signals',
      'failure-study',
      'raft',
      'rule-packs',
    ]);
    expect(sheet.sections.map((section) => section.id)).toEqual(SECTION_IDS.filter((id) => !ofSomeRadios.has(id)));
  });

  it('has a section for each kind of radio a boat carries', () => {
    const text = readFileSync(new URL('../../../assets/demo/brannoch-tern.backstay', import.meta.url), 'utf8');
    const demo = parseProject(text);
    if (!demo.ok) throw new Error('The demo boat does not load.');
    const ids = installSheet(demo.project, assess(demo.project), OPTIONS).sections.map((section) => section.id);
    const wanted = ['conditions', 'hf', 'satellites', 'gnss', 'strong-signals', 'failure-study', 'raft'];
    expect(ids).toEqual(expect.arrayContaining(wanted));
  });

  it('prints pairs, chances with their span, the reach of what is left, the raft, and what was left out', () => {
    const text = readFileSync(new URL('../../../assets/demo/vessarine.backstay', import.meta.url), 'utf8');
    const demo = parseProject(text);
    if (!demo.ok) throw new Error('The demo boat does not load.');
    const project = setEventExcluded(demo.project, 'lightning', true);
    const printed = installSheet(project, assess(project), OPTIONS);
    const words = (id: SectionId) => sectionText(sectionOf(printed, id));
    expect(words('redundancy')).toContain('Left out by choice, and not tried: Lightning on the mast.');
    expect(words('redundancy')).toMatch(/By VHF-2 on A2: .* Dependable reach to .*: \d+ NM\./);
    expect(words('failure-study')).toMatch(/VHF-1.*VHF-2/s);
    expect(words('failure-study')).toMatch(/passage of 20 days/);
    expect(words('failure-study')).toMatch(/\d %.*\d % to \d.* %/s);
    expect(words('raft')).toContain('registered to another owner');
    expect(words('raft')).toContain('Held by hand in the raft');
  });

  it('keeps scope, cautions and signatures whatever is left out', () => {
    const short = installSheet(BOAT, ASSESSMENT, { ...OPTIONS, sections: ['cables'] });
    expect(short.sections.map((section) => section.id)).toEqual(['scope', 'cautions', 'cables', 'signatures']);
    expect(short.titleBlock.scale).toBe('');
  });

  it('prints every caution the trade expects', () => {
    const text = sectionText(sectionOf(sheet, 'cautions'));
    for (const caution of CAUTIONS) expect(text).toContain(caution.text);
    for (const topic of [
      /isolate every battery/i,
      /fuse or breaker close to its source/i,
      /go aloft only/i,
      /power lines/i,
      /never transmit without an antenna/i,
      /keep clear of radiating antennas/i,
      /HF burn and shock/,
      /lightning/i,
      /bond/i,
      /petrol vapour/i,
      /batteries/i,
      /never send a distress alert to test/i,
      /licen[cs]e/i,
    ]) {
      expect(text).toMatch(topic);
    }
  });

  it('says who governs at the foot of every page and above the signatures, and never passes judgement', () => {
    expect(sheet.titleBlock.governs).toBe(GOVERNS);
    expect(GOVERNS).toMatch(/local codes.*licensed or certificated installer.*govern/i);
    expect(sectionText(sectionOf(sheet, 'signatures'))).toContain(GOVERNS);
    expect(sheetText(sheet)).not.toMatch(/seaworth|complian|complies/i);
  });

  it('never suggests an open-end reading with the transmitter', () => {
    expect(sectionText(sectionOf(sheet, 'commissioning'))).toMatch(/open-end readings only with an antenna analyser/);
  });

  it('takes the day from the date it is given and refuses what is none', () => {
    expect(sheet.titleBlock.date).toBe('2031-04-12');
    for (const date of ['soon', '', '2031-13-01', '12/04/2031']) {
      expect(() => installSheet(BOAT, ASSESSMENT, { ...OPTIONS, date })).toThrow(RangeError);
    }
  });

  it('holds no number that is none, and is the same twice', () => {
    expect(sheetText(sheet)).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(installSheet(BOAT, ASSESSMENT, OPTIONS)).toEqual(sheet);
  });
});

describe('schedules', () => {
  it('lists every item with the balloon number of the drawing, place, position and supply', () => {
    const rows = tableOf(sectionOf(sheet, 'equipment'));
    expect(rows.map((row) => row.Tag)).toEqual(BOAT.items.map((item) => item.tag));
    expect(rows[0]).toMatchObject({
      'No.': '1',
      Place: 'Chart table',
      'x (m)': '6.20',
      'y (m)': '−0.90',
      Status: 'keep',
    });
    expect(rows[0]?.Supply).toBe('BT-1 by F01, 2.5 mm², fuse 10 A');
    expect(rows.at(-1)?.Supply).toBe('own battery');
  });

  it('lists every run and feed, and length plus slack is cut', () => {
    const rows = tableOf(sectionOf(sheet, 'cables'));
    expect(rows.map((row) => row['No.'])).toEqual(['W01', 'W02', 'F01']);
    const [first, second, feed] = rows;
    // 14.15 m down the mast (and 0.1 m aft), then 2.05 m to the chart table: worked by hand from the positions.
    const drawn = Math.hypot(0.1, 14.15) + Math.hypot(1.4, 0.9, 1.2);
    expect(Number(first?.['Length (m)'])).toBeCloseTo(drawn, 2);
    expect(first).toMatchObject({ '+ slack (m)': '0.50', 'Known by': 'from drawing', Status: 'new', 'OD (mm)': '5.0' });
    expect(Number(first?.['= cut (m)'])).toBeCloseTo(drawn + 0.5, 2);
    expect(second).toMatchObject({
      '+ slack (m)': 'incl.',
      '= cut (m)': '23.50',
      'Known by': 'measured',
      Status: 'remove',
    });
    expect(feed).toMatchObject({ Fuse: 'fuse 10 A', Service: 'DC supply', 'Label A': 'F01', 'Label B': 'F01' });
  });

  it('names route, connectors and where a gland is wanted', () => {
    const [first] = tableOf(sectionOf(sheet, 'cables'));
    expect(first).toMatchObject({
      Route: 'Chart table, Mast foot, Masthead',
      'Connector A': 'UHF (PL-259)',
      Gland: 'Mast foot to Chart table',
      Service: 'VHF voice',
      'From (unit / port)': 'VHF-1 / ANT',
    });
  });

  it('cuts new cable only and buys whole steps', () => {
    const [coax, pair] = tableOf(sectionOf(sheet, 'materials'));
    expect(coax).toMatchObject({ Type: 'RG-58', 'Cut list (m)': 'W01: 16.7', 'Together (m)': '16.7', 'Buy (m)': '20' });
    expect(pair).toMatchObject({
      Type: 'pair, 2.5 mm²',
      'Together (m)': '4.0',
      'Buy (m)': '4',
      'Left over (m)': '0.0',
    });
    const removed = tableOf(sectionOf(sheet, 'materials'), 2);
    expect(removed.map((row) => row['No. or tag'])).toEqual(['VHF-9', 'A9', 'W02']);
  });
});

describe('results', () => {
  it('prints losses element by element with how each number is known', () => {
    const rows = tableOf(sectionOf(sheet, 'losses'));
    expect(rows.map((row) => row['Running (dB)'])).toEqual(['0.01', '3.41', '3.43']);
    expect(rows[1]).toMatchObject({ Element: 'RG-58, 16.7 m', 'Known by': 'data sheet', 'Power out (W)': '11.39' });
    expect(rows[0]?.['Known by']).toBe('assumed');
  });

  it('keeps horizon, typical and dependable apart, in words and numbers', () => {
    const section = sectionOf(sheet, 'ranges');
    expect(sectionText(section)).toMatch(/landmark, not a limit/);
    // 28 km and 37.4 km in nautical miles of 1.852 km.
    expect(tableOf(section)[0]).toMatchObject({
      To: 'Ship’s bridge',
      'Dependable (NM)': '15.1',
      'Horizon (NM)': '20.2',
      band: '22.8 to 27.9',
    });
  });

  it('prints the matrix letter for letter, with reasons below', () => {
    const section = sectionOf(sheet, 'redundancy');
    const matrix = section.blocks.find((block) => block.kind === 'matrix');
    expect(matrix?.rows.map((row) => row.letters.join(''))).toEqual(['RFR–RFRF', '–F–––RRF']);
    expect(sectionText(section)).toContain('Main mast lost: lost for a reason of its own.');
    expect(tableOf(section, 1)[0]).toMatchObject({ Thing: 'Main mast' });
  });

  it('orders findings by class, each whole, and prints why one was overruled', () => {
    const block = sectionOf(sheet, 'findings').blocks.find((each) => each.kind === 'findings');
    expect(block?.items.map((item) => item.mark)).toEqual(['A1', 'B1', 'C1']);
    expect(block?.items[1]).toMatchObject({
      concerns: 'W01, A1',
      measured: '3.43 dB, 55 % of the power',
      authority: 'Offshore racing rule (race rule)',
    });
    expect(block?.items[2]?.overruled).toBe('The mast is to be unstepped next year. (Owner)');
    expect(block?.items[2]?.authority).toBe('Common practice');
  });

  it('lays readings beside predictions', () => {
    const rows = tableOf(sectionOf(sheet, 'measurements'));
    // 10 log10(3.2 / 1.2) = 4.26 dB, 0.83 dB more than the 3.43 dB predicted.
    expect(rows[0]?.['Predicted and what it says']).toBe(
      'predicted 2.7 (3.43 dB); this reading means 4.26 dB: 0.83 dB unexplained',
    );
    expect(rows[1]).toMatchObject({ Date: 'no date', Frequency: 'not recorded' });
    expect(rows[1]?.['Predicted and what it says']).toContain('even a missing antenna would read 2.67');
    expect(rows[3]?.['Predicted and what it says']).toBe('predicted drop 0.31 V in the wiring; 0.30 V below idle');
  });

  it('prefills the commissioning blanks', () => {
    const blanks = sectionOf(sheet, 'commissioning').blocks.flatMap((block) =>
      block.kind === 'blanks' ? block.rows : [],
    );
    const expected = (label: RegExp): string | undefined => blanks.find((row) => label.test(row.label))?.expected;
    // An antenna of 1.5 (reflection 0.2) behind 3.426 dB reads 0.2 x 0.454 = 0.091: 1.20.
    expect(expected(/^VSWR at the set, antenna on/)).toBe(
      '1.20 or less; proves little: with no antenna it would read 2.67',
    );
    expect(expected(/antenna taken off/)).toMatch(/^2\.7 \(2\.4 to 2\.9\)/);
    expect(expected(/Forward power at the antenna/)).toBe('11.4 W (10.5 to 12.3)');
    expect(expected(/supply on transmit/)).toBe('idle less 0.31 V in the wiring; limit 0.36 V; not under 11.5 V');
    for (const check of [/DSC test call/, /position fed/, /BC-1/, /LED lights/, /Solar/, /Inverter/])
      expect(expected(check)).toBeDefined();
    expect(expected(/seen by a third party/)).toBeUndefined();
  });
});

describe('figures as the trade writes them', () => {
  it('rates without a tail of noughts, and never rounds a rating', () => {
    const rows = [10, 7.5, 0.75].map((value) => rated(METRIC_PREFERENCES, value, 'A'));
    expect(rows).toEqual(['10 A', '7.5 A', '0.75 A']);
    expect(rated({ ...METRIC_PREFERENCES, wire: 'awg' }, 2.5, 'mm2')).toBe('14 AWG');
  });

  it('tells a breaker from a fuse, and none from both', () => {
    const [feed] = BOAT.feeds;
    const [result] = ASSESSMENT.feeds;
    if (!feed || !result) throw new Error('The test boat has no feed.');
    const bare = { ...BOAT, feeds: [{ ...feed, fuse: null }] };
    const fuseOf = (assessment: typeof ASSESSMENT): string | undefined =>
      tableOf(sectionOf(installSheet(bare, assessment, OPTIONS), 'cables')).at(-1)?.Fuse;
    expect(fuseOf(ASSESSMENT)).toBe('breaker 10 A');
    const open = {
      ...result,
      protection: { ...result.protection, present: false, ratingA: null, verdict: 'missing' as const },
    };
    expect(fuseOf({ ...ASSESSMENT, feeds: [open] })).toBe('none');
    const verdict = tableOf(sectionOf(installSheet(bare, { ...ASSESSMENT, feeds: [open] }, OPTIONS), 'feeds'))[0]
      ?.Verdict;
    expect(verdict).toBe('drop good; no fuse or breaker');
  });

  it('shows small powers to a hundredth', () => {
    const faint = { ...VOICE_PATH, txPowerW: 2, wattsAtAntenna: 0.584 };
    const sheetOfFaint = installSheet(BOAT, { ...ASSESSMENT, paths: [faint] }, OPTIONS);
    expect(sectionText(sectionOf(sheetOfFaint, 'losses'))).toContain('2.0 W at the set, 0.58 W at the antenna');
  });
});

describe('the reader’s units', () => {
  it('prints feet, AWG and inches', () => {
    const feet = installSheet(BOAT, ASSESSMENT, {
      ...OPTIONS,
      preferences: { length: 'ft', distance: 'km', wire: 'awg', decimal: '.' },
    });
    const [first] = tableOf(sectionOf(feet, 'cables'));
    expect(Number(first?.['= cut (ft)'])).toBeCloseTo(
      (Math.hypot(0.1, 14.15) + Math.hypot(1.4, 0.9, 1.2) + 0.5) / 0.3048,
      1,
    );
    expect(first?.['OD (in)']).toBe('0.20');
    expect(tableOf(sectionOf(feet, 'feeds'))[0]?.Conductor).toBe('14 AWG');
    expect(tableOf(sectionOf(feet, 'ranges'))[0]).toMatchObject({ 'Dependable (km)': '28.0' });
    expect(tableOf(sectionOf(feet, 'materials'))[0]).toMatchObject({ 'Buy (ft)': '75' });
  });

  it('prints a decimal comma everywhere', () => {
    const comma = installSheet(BOAT, ASSESSMENT, { ...OPTIONS, preferences: { ...METRIC_PREFERENCES, decimal: ',' } });
    expect(tableOf(sectionOf(comma, 'equipment'))[0]?.['x (m)']).toBe('6,20');
    const numbers = ['losses', 'ranges', 'cables', 'feeds', 'measurements', 'commissioning'] as const;
    for (const id of numbers)
      expect(sectionText(sectionOf(comma, id)).replaceAll(/(2\.5 mm²|PL-259)/g, '')).not.toMatch(/\d\.\d/);
  });
});
