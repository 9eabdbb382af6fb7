import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setRedundancy } from '../../../core/edit/redundancy.ts';
import { type Project, projectSchema } from '../../../core/model/project.ts';
import type { Verdict } from '../../../core/rulePacks/types.ts';
import { area, held, words } from './boats.ts';

/**
 * The demo boats (invented) held against the packs by hand, from the parts lists in their files: rule, verdict, the things the
 * answer must name, and why. All as found and in A2 unless said otherwise.
 */
type Row = readonly [rule: string, verdict: Verdict, names: readonly string[], why: string];

function demo(name: string): Project {
  const file = new URL(`../../../assets/demo/${name}.backstay`, import.meta.url);
  // Each boat has a sea area of her own; the reasoning below is for A2, where most turns on what is aboard.
  return setRedundancy(projectSchema.parse(JSON.parse(readFileSync(file, 'utf8'))), { seaArea: 'A2' });
}

function check(project: Project, rows: readonly Row[]): void {
  it.each(rows)('%s: %s', (rule, verdict, names, why) => {
    const result = held(rule, project);
    expect(result.verdict, why).toBe(verdict);
    for (const name of names) expect(words(result), why).toContain(name);
  });
}

describe('the steel ketch Brannoch Tern', () => {
  const ketch = demo('brannoch-tern');
  check(ketch, [
    [
      'gmdss-two-alerts',
      'cannot-tell',
      ['BC-1', 'SAT-1', 'VHF-1 does not count'],
      'no MF/HF selective calling: beacon and a messenger whose distress service is not recorded; VHF does not reach the shore from A2',
    ],
    ['gmdss-receive-alerts', 'cannot-tell', ['SAT-1'], 'HF-1 has no selective calling, so only SAT-1 is left'],
    ['gmdss-ship-alerts', 'met', ['VHF-1'], 'class D set on the masthead whip'],
    ['gmdss-rescue-traffic', 'met', ['HF-1'], 'MF/HF voice through its tuner into the wire'],
    ['gmdss-locating', 'cannot-tell', ['BC-1'], 'a beacon but no transponder'],
    ['gmdss-transponder', 'not-met', [], 'none in the list'],
    ['gmdss-navtex', 'not-met', [], 'none in the list'],
    ['gmdss-beacon', 'not-met', ['BC-1', 'by hand'], 'bracket found: manual'],
    ['gmdss-a2-mf', 'not-met', ['HF-1'], 'the 150 W set without selective calling'],
    ['gmdss-a2-second-alert', 'met', ['BC-1'], 'a 406 MHz beacon is not MF'],
    ['gmdss-a3-hf', 'does-not-apply', ['A3', 'A2'], 'for another area'],
    ['gmdss-survival-vhf', 'not-met', ['VHF-2'], 'one handheld'],
    ['gmdss-duplicate-a2', 'not-met', ['VHF-1'], 'one VHF'],
    [
      'gmdss-reserve-6h',
      'met',
      ['B1', '220 Ah', 'HF-1', '10.1 h'],
      '220 / (2.75 + 0.4 + 14 + 2 + rest), rest = AIS 0.25, splitter, plotter and messenger',
    ],
    [
      'gmdss-reserve-apart',
      'cannot-tell',
      ['B1', 'only house battery'],
      'only radio is drawn on B1, and B2 starts the engine',
    ],
    ['us-battery-high', 'not-met', ['B1', '−0.30 m'], 'battery box under the saloon sole'],
    ['us-voltage', 'met', ['VHF-1', '12.4 V', '1.6 %'], 'read on transmit: 12.4 of 12.6 V'],
    ['uk-emergency-aerial', 'not-met', ['A1'], 'the only VHF antenna at the head of a mast with a boom'],
    ['uk-aerials-high', 'met', ['A1'], 'at the masthead'],
    ['uk-battery-dry', 'not-met', ['B1'], 'under the saloon sole, below the waterline'],
    ['uk-two-alerts', 'met', ['VHF-1', 'BC-1'], 'no matter of what service: a wired set and a beacon share nothing'],
    ['uk-automatic-position', 'not-met', ['VHF-1', 'SAT-1'], 'no data link in the list; SAT-1 is under steel'],
    ['osr-25-w', 'met', ['VHF-1', '25 W'], 'a 25 W set'],
    ['osr-masthead', 'met', ['A1'], 'A1 is on the main mast’s truck'],
    ['osr-feeder-loss', 'not-met', ['71 %', '40 %'], '17 m of RG-58C/U at 21 dB/100 m alone is 3.6 dB'],
    ['osr-feeder-table', 'does-not-apply', ['RG-58C/U', '71 %'], 'the table has no RG-58'],
    ['osr-handheld', 'met', ['VHF-2'], 'found in the grab bag'],
    ['osr-position', 'met', ['PL-1'], 'plotter with its own receiver at the wheel'],
    ['osr-ais', 'not-met', ['AIS-1', 'A4'], 'its GNSS antenna lies under the steel deck'],
    [
      'osr-later-ais-antenna',
      'cannot-tell',
      ['A1', 'SP-1'],
      'masthead antenna shared by a splitter; no figure for low loss',
    ],
    ['osr-later-beacon', 'met', ['BC-1'], 'registered to this boat'],
    ['aus-telephone-or-hf', 'met', ['HF-1'], 'HF'],
    ['aus-second-antenna', 'not-met', ['A2'], 'HF on one wire; SAT-1 carries text, which is not that communication'],
  ]);

  it('has two independent means in A1: VHF and the beacon', () => {
    const result = held('gmdss-two-alerts', area('A1')(ketch));
    expect([result.verdict, words(result)]).toEqual(['met', expect.stringContaining('VHF-1 (VHF) and BC-1')]);
  });
});

describe('the motor trawler Pelluna', () => {
  check(demo('pelluna'), [
    ['gmdss-two-alerts', 'not-met', ['VHF-A and VHF-B do not count'], 'two VHF sets and nothing else'],
    ['gmdss-rescue-traffic', 'not-met', ['VHF-A', 'VHF-B'], 'VHF only, in A2'],
    ['gmdss-vhf-dsc', 'met', ['VHF-A', 'VHF-B'], 'both are class D on whips'],
    ['gmdss-locating', 'not-met', [], 'no beacon and no transponder'],
    ['gmdss-beacon', 'not-met', [], 'no beacon'],
    ['gmdss-a2-mf', 'not-met', [], 'no MF/HF'],
    ['gmdss-duplicate-a2', 'not-met', ['B1'], 'two VHF, nothing farther; both fed from B1'],
    ['gmdss-reserve-apart', 'not-met', ['B1', 'RAD-1'], 'one bank for radio and radar'],
    ['gmdss-recharge', 'cannot-tell', ['B1'], 'no charger drawn'],
    ['us-two-way-vhf', 'not-met', [], 'no handheld'],
    ['us-battery-high', 'cannot-tell', ['B1', '0.10 m'], 'between waterline and deck'],
    ['us-fishing-power', 'not-met', ['B1'], 'one bank'],
    ['uk-emergency-aerial', 'does-not-apply', ['A1', 'A2'], 'roof and flybridge; the short mast carries no sails'],
    ['uk-aerials-high', 'cannot-tell', ['A2', '3.9 m', '4.6 m'], 'A2 at 85 % of the mast’s top'],
    ['uk-battery-dry', 'cannot-tell', ['B1', '0.10 m'], 'ten centimetres above the waterline'],
    ['uk-two-alerts', 'not-met', ['VHF-A', 'VHF-B', 'B1'], 'both sets on B1'],
    ['uk-automatic-position', 'not-met', ['VHF-B'], 'D1 joins AIS-1 to VHF-A only'],
    ['uk-beacon-test', 'does-not-apply', [], 'no beacon'],
    ['uk-fishing-reserve', 'does-not-apply', ['11.0 m'], 'under 12 m'],
    ['osr-masthead', 'not-met', ['A1', 'A2'], 'neither is on the mast'],
    ['osr-emergency-antenna', 'does-not-apply', ['A1', 'A2'], 'neither depends on a mast'],
    ['osr-feeder-loss', 'met', ['VHF-B', '27 %'], '6 m of RG-58C/U at 21 dB/100 m: 1.26 dB and two plugs'],
    ['osr-handheld', 'not-met', [], 'no handheld'],
    ['osr-weather', 'cannot-tell', ['FM-1', 'TS-1', 'A1'], 'the stereo shares A1 with VHF-A through the TV splitter'],
    ['osr-position', 'cannot-tell', ['AIS-1'], 'the only receiver is inside the AIS set'],
    ['osr-ais', 'met', ['AIS-1'], 'class B with a GNSS antenna on the roof'],
    ['osr-later-ais-antenna', 'met', ['A3', '1.20 m', '4.6 m'], 'its own whip of 1.2 m on the mast’s top'],
    ['aus-telephone-or-hf', 'not-met', [], 'neither'],
  ]);
});

describe('the catamaran Vessarine', () => {
  check(demo('vessarine'), [
    [
      'gmdss-two-alerts',
      'not-met',
      ['BC-1', 'VHF-1, VHF-2 and VHF-3 do not count'],
      'VHF, a beacon, and SAT-2 under carbon: from A2 the beacon alone alerts the shore',
    ],
    [
      'gmdss-beacon',
      'met',
      ['BC-1', 'registered to another owner'],
      'float-free, found with another owner’s registration',
    ],
    ['gmdss-a2-second-alert', 'met', ['BC-1'], 'a beacon'],
    ['gmdss-duplicate-a2', 'not-met', ['VHF-1', 'VHF-2', 'N1', 'B1'], 'two VHF on one breaker and one bank; no MF'],
    ['gmdss-reserve-apart', 'not-met', ['B1', 'INV-1'], 'one bank, with the inverter on it'],
    ['uk-emergency-aerial', 'met', ['A2', 'VHF-2'], 'A2 stands on the arch'],
    ['uk-battery-dry', 'not-met', ['B1'], 'low in the starboard hull'],
    ['uk-two-alerts', 'met', ['VHF-1', 'BC-1', 'another owner'], 'a wired set and a beacon'],
    ['uk-automatic-position', 'not-met', ['VHF-2'], 'D2 joins the bus to VHF-1 only'],
    ['osr-masthead', 'met', ['A1'], 'at the masthead'],
    ['osr-emergency-antenna', 'met', ['A2'], 'VHF-2 keeps an antenna when the mast goes'],
    ['osr-feeder-loss', 'not-met', ['26 %', '62 %'], 'reckoned good, measured at 4.26 dB: the wet joint J3'],
    ['osr-handheld', 'met', ['VHF-3'], 'in the grab bag'],
    ['osr-ais', 'not-met', ['AIS-1'], 'under carbon, no fix'],
    ['osr-later-ais-antenna', 'met', ['A3', '4.5 m'], 'its own whip on the arch'],
    ['osr-later-beacon', 'not-met', ['BC-1'], 'registered to another owner'],
    ['aus-telephone-or-hf', 'cannot-tell', ['SAT-1'], 'broadband; whether it counts as a telephone is not said'],
    ['aus-rigged-emergency-antenna', 'met', ['A2'], 'fitted on the arch for good'],
  ]);
});
