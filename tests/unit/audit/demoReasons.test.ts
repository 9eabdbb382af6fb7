import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { projectSchema } from '../../../core/model/project.ts';
import { SERVICES } from '../../../core/model/services.ts';

// Every cell of the two matrices of the demo boats with its reason: what the survey would say of it, written by hand from the
// boats' own tables (invented boats; no outside source). The letters are in demoBoats.test.ts.

const COLUMNS = ['VF', 'VH', 'DA', 'AT', 'AR', 'SI', 'LR', 'BC'] as const;
type Row = readonly [label: string, ...reasons: readonly RegExp[]];

function reasonsOf(name: string, label: string): readonly string[] {
  const file = new URL(`../../../assets/demo/${name}.backstay`, import.meta.url);
  const { matrix } = assess(projectSchema.parse(JSON.parse(readFileSync(file, 'utf8')))).redundancy;
  const row = matrix.find(({ event }) => event.label === label);
  if (!row) throw new Error(`No event ${label}`);
  return COLUMNS.map((code) => {
    const id = SERVICES.find((service) => service.code === code)?.id;
    return row.states.find(({ serviceId }) => serviceId === id)?.reason ?? '';
  });
}

function expectReasons(name: string, [label, ...expected]: Row): void {
  const reasons = reasonsOf(name, label);
  expect(expected).toHaveLength(COLUMNS.length);
  expected.forEach((pattern, index) => {
    expect(reasons[index], `${label}, ${COLUMNS[index]}`).toMatch(pattern);
  });
}

describe('the steel ketch, as found', () => {
  const VH = /^By VHF-2\.$/;
  const AT = /A4 is under metal; without a fix it does not transmit/;
  const BC = /^By BC-1\.$/;
  const HF = /^By HF-1 on A2: HF reception depends on the hour/;
  const HF_FAR = /^By HF-1 on A2: part of its lead-in radiates inside the metal hull/;
  const SAT = /^By SAT-1 on A3: broadcasts by satellite/;
  const SAT_OWN = /^By SAT-1 on A3, on its own battery: broadcasts/;
  const SAT_OWN_FAR = /^By SAT-1 on A3, on its own battery: only for as long as that lasts/;
  const rows: readonly Row[] = [
    [
      'Nothing failed',
      /feeder takes 7[01] %/,
      VH,
      /no position source is connected to VHF-1/,
      AT,
      /feeder takes 71 %/,
      /^By VHF-1 on A1\.$/,
      HF_FAR,
      BC,
    ],
    ['Main mast lost', /VHF-1 goes with A1/, VH, /VHF-1 goes with A1/, AT, /AIS-1 goes with A1/, HF, HF_FAR, BC],
    [
      'Both masts lost',
      /VHF-1 goes with A1/,
      VH,
      /VHF-1 goes with A1/,
      AT,
      /AIS-1 goes with A1/,
      SAT,
      /^By SAT-1 on A3: the feeder/,
      BC,
    ],
    ['Breaker B7 opens', /VHF-1 goes with B7/, VH, /VHF-1 goes with B7/, AT, /AIS-1 goes with B7/, HF, HF_FAR, BC],
    ['Splitter SP-1 fails', /goes with SP-1/, VH, /goes with SP-1/, AT, /AIS-1 goes with SP-1/, HF, HF_FAR, BC],
    ['House bank flat', /goes with B1/, VH, /goes with B1/, AT, /AIS-1 goes with B1/, SAT_OWN, SAT_OWN_FAR, BC],
    [
      'Saloon and bilge under its sole floods over B1',
      /goes with B1/,
      VH,
      /goes with B1/,
      AT,
      /AIS-1 goes with B1/,
      SAT_OWN,
      SAT_OWN_FAR,
      BC,
    ],
    [
      'Lightning on the main mast',
      /VHF-1 is gone/,
      VH,
      /VHF-1 is gone/,
      AT,
      /AIS-1 is gone/,
      /^By VHF-2: by handheld/,
      /HF-1 is gone; SAT-1 is gone/,
      BC,
    ],
  ];
  for (const row of rows) it(row[0], () => expectReasons('brannoch-tern', row));
});

describe('the catamaran, as found', () => {
  const VH = /^By VHF-3\.$/;
  const DA = /^By VHF-3: by handheld, with a short reach/;
  const AT = /AIS-1 has its GNSS antenna inside, under carbon/;
  const BC = /^By BC-1: it is registered to another owner/;
  const CARRIED = /^By SAT-2, carried on deck/;
  const LOW = /^By VHF-2 on A2.* less than half as high/;
  const rows: readonly Row[] = [
    [
      'Nothing failed',
      /^By VHF-1 on A1\.$/,
      VH,
      /^By VHF-1 on A1, with position\.$/,
      AT,
      /^By AIS-1 on A3\.$/,
      /^By VHF-1 on A1\.$/,
      /^By SAT-1 through RT-1\.$/,
      BC,
    ],
    [
      'Mast lost',
      LOW,
      VH,
      /no position source is connected to VHF-2/,
      AT,
      /^By AIS-1 on A3\.$/,
      LOW,
      /^By SAT-1 through RT-1\.$/,
      BC,
    ],
    [
      'Stern arch lost',
      /^By VHF-1 on A1\.$/,
      VH,
      /^By VHF-1 on A1, with position\.$/,
      AT,
      /goes with Stern arch/,
      /^By VHF-1 on A1\.$/,
      /SAT-2 has no sky: its antenna A4 is under carbon/,
      BC,
    ],
    [
      'Breaker N1 opens',
      /VHF-1 goes with N1; VHF-2 goes with N1/,
      VH,
      DA,
      AT,
      /AIS-1 goes with N1/,
      /^By SAT-1: forecasts/,
      /the router is dead/,
      BC,
    ],
    [
      'House bank flat',
      /VHF-1 goes with B1; VHF-2 goes with B1/,
      VH,
      DA,
      AT,
      /AIS-1 goes with B1/,
      CARRIED,
      CARRIED,
      BC,
    ],
    [
      'Starboard hull floods over B1',
      /VHF-1 goes with B1; VHF-2 goes with B1/,
      VH,
      DA,
      AT,
      /AIS-1 goes with B1/,
      CARRIED,
      CARRIED,
      BC,
    ],
    ['Lightning on the mast', /VHF-1 is gone; VHF-2 is gone/, VH, DA, AT, /AIS-1 is gone/, CARRIED, CARRIED, BC],
    ['Abandon to the raft', /VHF-1 is gone; VHF-2 is gone/, VH, DA, AT, /AIS-1 is gone/, CARRIED, CARRIED, BC],
  ];
  for (const row of rows) it(row[0], () => expectReasons('vessarine', row));
});
