import { type HorizonBasis, horizonKm } from '../propagation/horizon.ts';
import { MAX_REACH_KM, reachKm } from '../propagation/reach.ts';
import { wattsToDbm } from '../rf/decibels.ts';
import { KM_PER_NM } from '../units/constants.ts';
import { number } from './parameters.ts';
import type { Answer, Given, Parameter, Sum } from './types.ts';

/** What a person calls each basis of the horizon. */
const BASES: Readonly<Record<string, HorizonBasis>> = {
  '4/3': 'four-thirds-earth',
  '2.25': 'trade-2.25',
  '2.2': 'trade-2.2',
  geometric: 'geometric',
};

const height = (key: string, whose: string): Parameter => ({
  key,
  label: `height of ${whose} antenna above the water`,
  unit: 'm',
  kind: 'number',
  min: 0,
  max: 5000,
  example: '16',
});

const CONSTANT: Parameter = {
  key: 'constant',
  label: 'way the horizon is reckoned',
  unit: '',
  kind: 'text',
  choices: Object.keys(BASES),
  fallback: '4/3',
  example: '2.25',
};

const horizonSum: Sum = {
  id: 'horizon',
  title: 'Radio horizon between two antennas',
  parameters: [height('h1', 'one'), height('h2', 'the other'), CONSTANT],
  source:
    'ITU-R P.526 standard refraction, 4/3 × 6371 km; 2.25 and 2.2 NM per root metre are trade constants, no source',
  reckon: (given) => distances('horizon', 'horizon', horizonOf(given)),
};

const rangeSum: Sum = {
  id: 'range',
  title: 'Range over sea by the power budget, one way',
  parameters: [
    { ...number('watts', 'transmitter power', 'W', 0.001, 2000, '25'), fallback: 25 },
    { ...number('gain1', 'gain of the sending antenna', 'dBi', -30, 30, '2.15'), fallback: 2.15 },
    { ...number('loss1', 'loss of its feeder', 'dB', 0, 60, '3'), fallback: 0 },
    height('h1', 'the sending'),
    { ...number('gain2', 'gain of the receiving antenna', 'dBi', -30, 30, '2.15'), fallback: 2.15 },
    { ...number('loss2', 'loss of its feeder', 'dB', 0, 60, '3'), fallback: 0 },
    height('h2', 'the receiving'),
    { ...number('mhz', 'frequency', 'MHz', 100, 3000, '156.8'), fallback: 156.8 },
    { ...number('sensitivity', "receiver's sensitivity", 'dBm', -150, 0, '-107'), fallback: -107 },
    { ...number('margin', 'real-life margin kept in hand', 'dB', 0, 60, '20'), fallback: 0 },
  ],
  source:
    'ITU-R P.525 and P.526 section 3 over a smooth sea, vertical polarisation, median; model tolerance 4 dB at VHF',
  reckon: (given) => {
    const maxLossDb = allowedLossDb(given);
    const reach = { frequencyMhz: given.number('mhz'), h1M: given.number('h1'), h2M: given.number('h2') };
    const km = reachKm(reach, maxLossDb);
    if (km >= MAX_REACH_KM)
      throw new RangeError(`The range comes out beyond ${MAX_REACH_KM} km, where this model ends.`);
    return [
      { key: 'maxLossDb', label: 'loss that may lie between', value: maxLossDb, unit: 'dB', digits: 1 },
      ...distances('range', 'range, median level', km),
      ...distances('horizon', 'horizon, a landmark', horizonKm('four-thirds-earth', reach.h1M, reach.h2M)),
    ];
  },
};

function allowedLossDb(given: Given): number {
  const sentDb = wattsToDbm(given.number('watts')) + given.number('gain1') - given.number('loss1');
  return sentDb + given.number('gain2') - given.number('loss2') - given.number('sensitivity') - given.number('margin');
}

function horizonOf(given: Given): number {
  return horizonKm(BASES[given.text('constant')] ?? 'four-thirds-earth', given.number('h1'), given.number('h2'));
}

const distances = (key: string, label: string, km: number): readonly Answer[] => [
  { key: `${key}Nm`, label, value: km / KM_PER_NM, unit: 'NM', digits: 1 },
  { key: `${key}Km`, label, value: km, unit: 'km', digits: 1 },
];

export const REACH_SUMS: readonly Sum[] = [horizonSum, rangeSum];
