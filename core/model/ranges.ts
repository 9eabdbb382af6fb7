import type { Measurement } from './project.ts';

/** Believable span of a figure, in the unit of its key. Outside it a number is a slip of the pen, not a part. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** Spans by figure key. Judgement: wide enough for anything afloat, narrow enough to catch a wrong unit or sign. */
const BY_KEY: Readonly<Record<string, Range>> = {
  txPowerW: { min: 0, max: 50_000 },
  frequencyMhz: { min: 0.01, max: 100_000 },
  minFrequencyMhz: { min: 0, max: 100_000 },
  maxFrequencyMhz: { min: 0.01, max: 100_000 },
  rxSensitivityDbm: { min: -170, max: 0 },
  supplyVoltageV: { min: 0, max: 400 },
  voltageV: { min: 0.5, max: 400 },
  vswr: { min: 1, max: 100 },
  hpbwDeg: { min: 0.1, max: 360 },
  lossK1: { min: 0, max: 50 },
  lossK2: { min: 0, max: 5 },
  lossTolerancePercent: { min: 0, max: 100 },
  impedanceOhm: { min: 1, max: 2000 },
  velocityFactor: { min: 0.1, max: 1 },
  outsideDiameterMm: { min: 0.5, max: 200 },
  areaMm2: { min: 0.05, max: 1000 },
  ohmPerKm: { min: 0.001, max: 1000 },
  ampacityA: { min: 0.1, max: 5000 },
  capacityAh: { min: 0.1, max: 100_000 },
  ratingA: { min: 0.01, max: 10_000 },
  feedHeightM: { min: -5, max: 60 },
};

/** Spans by the unit at the end of a key, for figures a part names itself (`wayLossDb`, `beamHeightM`). */
const BY_SUFFIX: readonly (readonly [string, Range])[] = [
  ['LossDb', { min: 0, max: 200 }],
  ['GainDb', { min: -60, max: 100 }],
  ['Dbi', { min: -60, max: 80 }],
  ['Dbm', { min: -200, max: 100 }],
  ['Db', { min: -200, max: 200 }],
  ['Mhz', { min: 0, max: 100_000 }],
  ['Percent', { min: 0, max: 100 }],
  ['Mm', { min: 0, max: 10_000 }],
  ['GPerM', { min: 0, max: 100_000 }],
  ['Deg', { min: -360, max: 360 }],
  ['Ah', { min: 0, max: 100_000 }],
  ['M', { min: -2000, max: 2000 }],
  ['A', { min: 0, max: 10_000 }],
  ['V', { min: 0, max: 1000 }],
  ['W', { min: 0, max: 100_000 }],
];

const ANYTHING: Range = { min: -1e9, max: 1e9 };

/** The span a part's figure must lie in, by its key. */
export function figureRange(key: string): Range {
  return BY_KEY[key] ?? BY_SUFFIX.find(([suffix]) => key.endsWith(suffix))?.[1] ?? ANYTHING;
}

const MEASUREMENT_RANGES: Readonly<Record<Measurement['kind'], Range>> = {
  vswr: { min: 1, max: 1000 },
  'open-end-vswr': { min: 1, max: 1000 },
  'insertion-loss-db': { min: 0, max: 200 },
  'forward-power-w': { min: 0, max: 50_000 },
  'reflected-power-w': { min: 0, max: 50_000 },
  'supply-idle-v': { min: 0, max: 400 },
  'supply-transmit-v': { min: 0, max: 400 },
};

/** The span a measured value must lie in. An open-end VSWR of exactly 1 would be an endless cable, but a meter may show it. */
export function measurementRange(kind: Measurement['kind']): Range {
  return MEASUREMENT_RANGES[kind];
}
