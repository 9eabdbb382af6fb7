import { freeSpaceLossDb } from '../propagation/freeSpace.ts';
import { type SeaPath, seaPathLossDb, sphericalEarthLoss } from '../propagation/sphericalEarth.ts';
import { seaMedianLoss } from '../propagation/troposcatter.ts';
import { twoRay, twoRayPathLossDb } from '../propagation/twoRay.ts';
import { timeVariabilityDb } from '../propagation/variability.ts';
import type { Water } from '../propagation/water.ts';
import { freeSpaceDistanceM, type StrongSignalReceiver, strongSignalDbm, strongSignalMargins } from '../rf/overload.ts';
import { number } from './parameters.ts';
import type { Answer, Given, Parameter, Sum } from './types.ts';

const choice = (key: string, label: string, choices: readonly [string, ...string[]]): Parameter => ({
  key,
  label,
  unit: '',
  kind: 'text',
  choices,
  fallback: choices[0],
  example: choices[0],
});

const decibels = (key: string, label: string, value: number): Answer => ({ key, label, value, unit: 'dB', digits: 2 });

const D = number('d', 'distance', 'km', 0.001, 2000, '30');
const H1 = number('h1', 'height of one antenna above the water', 'm', 0, 1000, '15');
const H2 = number('h2', 'height of the other', 'm', 0, 1000, '1.5');
const GROUND = choice('ground', 'water the path runs over', ['sea', 'fresh-water']);
const POLARISATION = choice('polarisation', 'polarisation', ['vertical', 'horizontal']);

/** The path a sum is about. The parameter checks have already held every word to its list. */
function pathOf(given: Given): SeaPath {
  return {
    frequencyMhz: given.number('mhz'),
    distanceKm: given.number('d'),
    h1M: given.number('h1'),
    h2M: given.number('h2'),
    polarisation: given.text('polarisation') === 'horizontal' ? 'horizontal' : 'vertical',
    water: waterOf(given),
  };
}

const waterOf = (given: Given): Water => (given.text('ground') === 'fresh-water' ? 'fresh-water' : 'sea');

/** Total loss by model, and what else the model has to tell. */
const MODELS: Readonly<Record<string, (path: SeaPath) => readonly Answer[]>> = {
  'smooth-sea': (path) => [decibels('lossDb', 'path loss', seaPathLossDb(path))],
  'free-space': (path) => [decibels('lossDb', 'path loss', freeSpaceLossDb(path.frequencyMhz, path.distanceKm))],
  'two-ray': (path) => [
    decibels('lossDb', 'path loss', twoRayPathLossDb(path)),
    decibels('raysOnlyDb', 'more than free space by the two rays alone', twoRay(path).lossDb),
    {
      key: 'grazingDeg',
      label: 'grazing angle',
      value: (twoRay(path).grazingRad * 180) / Math.PI,
      unit: '°',
      digits: 2,
    },
  ],
  'sea-median': (path) => {
    const { lossDb, scatterPathDb, dependable } = seaMedianLoss(path);
    if (!dependable)
      throw new RangeError('Scatter is not to be counted on for an antenna below 10 m: take model=smooth-sea here.');
    return [decibels('lossDb', 'path loss', lossDb), decibels('scatterPathDb', 'by scatter alone', scatterPathDb)];
  },
};

const pathLossSum: Sum = {
  id: 'path-loss',
  title: 'Loss between two antennas without gain, by model',
  parameters: [
    choice('model', 'model', ['smooth-sea', 'free-space', 'two-ray', 'sea-median']),
    number('mhz', 'frequency', 'MHz', 30, 6000, '156.8'),
    D,
    { ...H1, fallback: 10 },
    { ...H2, fallback: 10 },
    GROUND,
    POLARISATION,
  ],
  source:
    'Median, still water. free-space: ITU-R P.525. smooth-sea: with P.526 section 3, 4 dB of model tolerance at VHF. two-ray: near the boat only. sea-median: with scatter of P.1812-8, both antennas at 10 m or more',
  reckon: (given) => {
    const path = pathOf(given);
    const answers = MODELS[given.text('model')]?.(path) ?? [];
    const total = answers[0]?.value ?? Number.NaN;
    const overFreeSpaceDb = total - freeSpaceLossDb(path.frequencyMhz, path.distanceKm);
    return [...answers, decibels('overFreeSpaceDb', 'more than free space', overFreeSpaceDb)];
  },
};

const diffractionSum: Sum = {
  id: 'diffraction',
  title: 'Diffraction by the round earth over smooth water, more than free space',
  parameters: [
    number('mhz', 'frequency', 'MHz', 10, 10_000, '156.8'),
    D,
    H1,
    H2,
    GROUND,
    POLARISATION,
    { ...number('ae', 'effective earth radius', 'km', 1000, 100_000, '8500'), fallback: 8500 },
  ],
  source: 'ITU-R P.526 section 3.1.1 beyond the horizon and 3.2 within it; median refraction is 8500 km',
  reckon: (given) => {
    const loss = sphericalEarthLoss({ ...pathOf(given), effectiveRadiusKm: given.number('ae') });
    return [
      decibels('diffractionDb', 'diffraction', loss.lossDb),
      { key: 'horizonKm', label: 'horizon', value: loss.horizonKm, unit: 'km', digits: 2 },
      ...metres('clearanceM', 'least height of the ray over the water', loss.clearanceM),
      ...metres('requiredClearanceM', 'height from which nothing is lost', loss.requiredClearanceM),
    ];
  },
};

const metres = (key: string, label: string, value: number | null): readonly Answer[] =>
  value === null ? [] : [{ key, label, value, unit: 'm', digits: 2 }];

const timeVariabilitySum: Sum = {
  id: 'time-variability',
  title: 'What a level must have over its median to hold for a share of the time',
  parameters: [
    { ...number('percent', 'share of the time', '%', 1, 99, '90'), fallback: 90 },
    { ...number('mhz', 'frequency', 'MHz', 30, 6000, '156.8'), fallback: 156.8 },
    D,
    H1,
    H2,
    GROUND,
    POLARISATION,
  ],
  source:
    'NTIA Report 82-100, section 5, maritime temperate climate over sea, hours of a whole year; slow changes of the air, not the fading by waves. Median loss: ITU-R P.526 section 3',
  reckon: (given) => {
    const path = pathOf(given);
    const extraDb = timeVariabilityDb(path, given.number('percent'));
    return [
      decibels('extraLossDb', 'more loss than the median', extraDb),
      decibels('medianLossDb', 'median path loss', seaPathLossDb(path)),
      decibels('lossDb', 'path loss not exceeded for that share', seaPathLossDb(path) + extraDb),
    ];
  },
};

const RECEIVERS: Readonly<Record<string, StrongSignalReceiver>> = { vhf: 'vhf', ais: 'ais' };

const overloadSum: Sum = {
  id: 'overload',
  title: 'A strong carrier near by, or from an own antenna, against what a receiver bears',
  parameters: [
    choice('receiver', 'receiver', ['vhf', 'ais']),
    { ...number('watts', 'transmitter power', 'W', 0.001, 2000, '25'), fallback: 25 },
    { ...number('mhz', 'frequency of the carrier', 'MHz', 30, 3000, '156.8'), fallback: 156.8 },
    number('offset', 'distance of the carrier from the frequency received', 'MHz', 0, 100, '5.2'),
    { ...number('gain1', 'gain of the sending antenna', 'dBi', -30, 30, '2.15'), fallback: 2.15 },
    { ...number('loss1', 'loss of its feeder', 'dB', 0, 60, '1'), fallback: 0 },
    { ...number('gain2', 'gain of the receiving antenna', 'dBi', -30, 30, '2.15'), fallback: 2.15 },
    { ...number('loss2', 'loss of its feeder', 'dB', 0, 60, '1'), fallback: 0 },
    number('m', 'distance through the air', 'm', 1, 20_000, '50'),
    number('isolation', 'isolation between own antennas, gains included', 'dB', 0, 150, '40'),
  ],
  oneOf: ['m', 'isolation'],
  source:
    'AIS: IEC 62287-2 Table 4. VHF: blocking 90 dBµV of electromotive force, EN 300 162 class, from memory. +10 dBm, to be kept from in any case: no standard. Through the air: ITU-R P.525',
  reckon: (given) => overloadAnswers(given),
};

function overloadAnswers(given: Given): readonly Answer[] {
  const between = given.has('isolation');
  const frequencyMhz = given.number('mhz');
  const way = {
    powerW: given.number('watts'),
    transmitterLossDb: given.number('loss1'),
    transmitterGainDbi: between ? 0 : given.number('gain1'),
    receiverGainDbi: between ? 0 : given.number('gain2'),
    receiverLossDb: given.number('loss2'),
    pathLossDb: between ? given.number('isolation') : freeSpaceLossDb(frequencyMhz, given.number('m') / 1000),
  };
  const levelDbm = strongSignalDbm(way);
  const margins = strongSignalMargins(RECEIVERS[given.text('receiver')] ?? 'vhf', levelDbm, given.number('offset'));
  const leastDb = margins[0]?.marginDb ?? 0;
  const level: Answer = { key: 'levelDbm', label: 'level at the receiver', value: levelDbm, unit: 'dBm', digits: 1 };
  const keptAtM = freeSpaceDistanceM(frequencyMhz, way.pathLossDb - leastDb);
  return [
    level,
    ...margins.map(({ limit, marginDb }) =>
      decibels(`${marginKey(limit.key)}MarginDb`, `margin to ${limit.label}`, marginDb),
    ),
    {
      key: 'keptWithW',
      label: 'power that keeps every limit',
      value: way.powerW * 10 ** (leastDb / 10),
      unit: 'W',
      digits: 3,
    },
    ...(between ? [] : metres('keptFromM', 'distance from which on every limit is kept', keptAtM)),
  ];
}

/** `own-channel` as part of a name: `ownChannel`. */
const marginKey = (key: string): string => key.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

export const PATH_SUMS: readonly Sum[] = [pathLossSum, diffractionSum, timeVariabilitySum, overloadSum];
