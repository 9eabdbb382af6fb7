import { CATALOGUE } from '../catalogue/catalogue.ts';
import { attenuationDbPer100m, type CoaxPart } from '../rf/coax.ts';
import { afterLossW, dbmToWatts, lossOfPercentDb, lostPercent, wattsToDbm } from '../rf/decibels.ts';
import {
  lossOfOpenEndVswrDb,
  mismatchLossDb,
  openEndVswr,
  reflectionOfVswr,
  returnLossDb,
  totalLineLossDb,
  vswrAtInput,
} from '../rf/mismatch.ts';
import type { Answer, Given, Sum } from './types.ts';

const LINE_THEORY = 'line theory as in any radio handbook; worked examples in an open AIS handbook, chapters 27 and 32';

const db = (key: string, label: string, value: number, digits = 2): Answer => ({
  key,
  label,
  value,
  unit: 'dB',
  digits,
});
const percent = (key: string, label: string, value: number): Answer => ({ key, label, value, unit: '%', digits: 1 });
const ratio = (key: string, label: string, value: number): Answer => ({ key, label, value, unit: '', digits: 2 });

const coaxLossSum: Sum = {
  id: 'coax-loss',
  title: 'Loss of a length of coax',
  parameters: [
    { key: 'type', label: 'cable type, by its id or name', unit: '', kind: 'text', example: 'rg-213' },
    {
      key: 'mhz',
      label: 'frequency',
      unit: 'MHz',
      kind: 'number',
      min: 0.1,
      max: 6000,
      fallback: 156.8,
      example: '156.8',
    },
    { key: 'm', label: 'length', unit: 'm', kind: 'number', min: 0, max: 2000, example: '20' },
    {
      key: 'c',
      label: 'cable temperature',
      unit: '°C',
      kind: 'number',
      min: -40,
      max: 85,
      fallback: 20,
      example: '20',
    },
  ],
  source: 'k1·√f + k2·f per type, fitted to the published tables named in the catalogue; 0.2 % per kelvin from memory',
  reckon: (given) => {
    const part = coaxNamed(given.text('type'));
    const per100M = attenuationDbPer100m(part, given.number('mhz'), given.number('c'));
    const lossDb = (per100M * given.number('m')) / 100;
    return [
      db('dbPer100m', 'attenuation per 100 m', per100M),
      db('lossDb', 'loss', lossDb),
      db('toleranceDb', 'tolerance, plus or minus', (lossDb * part.figures.lossTolerancePercent.value) / 100),
      percent('lostPercent', 'power lost', lostPercent(lossDb)),
    ];
  },
};

function coaxNamed(name: string): CoaxPart {
  const types = CATALOGUE.filter((part) => part.kind === 'coax');
  const wanted = plain(name);
  // `400` and `rg58` are what people write for `400-class` and `RG-58/U`.
  const spellings = [wanted, `${wanted}class`, `${wanted}u`];
  const exact = types.find((part) => spellings.includes(plain(part.id)) || spellings.includes(plain(part.name)));
  const starting = types.filter((part) => plain(part.id).includes(wanted) || plain(part.name).includes(wanted));
  const found = exact ?? (starting.length === 1 ? starting[0] : undefined);
  if (found) return found;
  throw new RangeError(`type=${name} is not one cable type: give one of ${types.map((part) => part.id).join(', ')}.`);
}

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/^coax-/, '')
    .replace(/[^a-z0-9]/g, '');

const dbmWattsSum: Sum = {
  id: 'dbm-watts',
  title: 'Level and power, either way',
  parameters: [
    { key: 'dbm', label: 'level', unit: 'dBm', kind: 'number', min: -200, max: 100, example: '44' },
    { key: 'watts', label: 'power', unit: 'W', kind: 'number', min: 1e-20, max: 1e7, example: '25' },
  ],
  oneOf: ['dbm', 'watts'],
  source: 'definition: 10 log(P / 1 mW)',
  reckon: (given) => {
    const levelDbm = given.has('dbm') ? given.number('dbm') : wattsToDbm(given.number('watts'));
    return [
      { key: 'levelDbm', label: 'level', value: levelDbm, unit: 'dBm', digits: 2 },
      { key: 'powerW', label: 'power', value: dbmToWatts(levelDbm), unit: 'W', digits: 3 },
    ];
  },
};

const mismatchSum: Sum = {
  id: 'mismatch',
  title: 'What a mismatched antenna costs, and what a meter at the radio shows of it',
  parameters: [
    { key: 'vswr', label: 'VSWR at the antenna', unit: '', kind: 'number', min: 1, max: 1000, example: '2' },
    {
      key: 'loss',
      label: 'matched loss of the feeder',
      unit: 'dB',
      kind: 'number',
      min: 0,
      max: 60,
      fallback: 0,
      example: '3',
    },
  ],
  source: LINE_THEORY,
  reckon: (given) => {
    const vswr = given.number('vswr');
    const lossDb = given.number('loss');
    return [
      ratio('reflection', 'reflection coefficient', reflectionOfVswr(vswr)),
      percent('reflectedPercent', 'power thrown back by the antenna', 100 * reflectionOfVswr(vswr) ** 2),
      // A perfect match returns nothing: its return loss has no number.
      ...(vswr > 1 ? [db('returnLossDb', 'return loss', returnLossDb(vswr))] : []),
      db('mismatchLossDb', 'mismatch loss', mismatchLossDb(vswr), 3),
      db('totalLossDb', 'loss of the line with this load', totalLineLossDb(lossDb, vswr), 3),
      ratio('vswrAtRadio', 'VSWR read at the radio', vswrAtInput(lossDb, vswr)),
    ];
  },
};

const openEndVswrSum: Sum = {
  id: 'open-end-vswr',
  title: 'VSWR with the antenna taken off, and the loss of the feeder, either way',
  parameters: [
    { key: 'loss', label: 'loss of the feeder', unit: 'dB', kind: 'number', min: 0.01, max: 60, example: '2.2' },
    {
      key: 'vswr',
      label: 'VSWR read at the radio with the far end open',
      unit: '',
      kind: 'number',
      min: 1.001,
      max: 1000,
      example: '4',
    },
  ],
  oneOf: ['loss', 'vswr'],
  source: '10 log((S + 1) / (S − 1)); open-end test as in a radio journal of 2005 and a sailing magazine of 2019',
  reckon: (given) => {
    const lossDb = given.has('loss') ? given.number('loss') : lossOfOpenEndVswrDb(given.number('vswr'));
    return [
      db('lossDb', 'loss of the feeder', lossDb),
      ratio('openEndVswr', 'open-end VSWR', openEndVswr(lossDb)),
      percent('lostPercent', 'power lost', lostPercent(lossDb)),
    ];
  },
};

const feederShareSum: Sum = {
  id: 'feeder-share',
  title: 'Share of the power a feeder takes, and its loss, either way',
  parameters: [
    { key: 'db', label: 'loss', unit: 'dB', kind: 'number', min: 0, max: 100, example: '2.2' },
    { key: 'percent', label: 'share lost', unit: '%', kind: 'number', min: 0, max: 99.999, example: '40' },
    {
      key: 'watts',
      label: 'power of the set',
      unit: 'W',
      kind: 'number',
      min: 0.001,
      max: 2000,
      fallback: 25,
      example: '25',
    },
  ],
  oneOf: ['db', 'percent'],
  source: 'definition: 100·(1 − 10^(−dB/10)); racing rules allow a feeder 40 per cent, 2.218 dB',
  reckon: (given) => {
    const lossDb = given.has('db') ? given.number('db') : lossOfPercentDb(given.number('percent'));
    return [
      db('lossDb', 'loss', lossDb, 3),
      percent('lostPercent', 'share lost', lostPercent(lossDb)),
      { key: 'wattsLeft', label: 'power left', value: leftW(given, lossDb), unit: 'W', digits: 1 },
    ];
  },
};

const leftW = (given: Given, lossDb: number): number => afterLossW(given.number('watts'), lossDb);

export const FEEDER_SUMS: readonly Sum[] = [coaxLossSum, dbmWattsSum, mismatchSum, openEndVswrSum, feederShareSum];
