import type { Unit } from '../../core/units/quantity.ts';

const NAMES: Readonly<Record<string, string>> = {
  txPowerW: 'Transmit power',
  frequencyMhz: 'Working frequency',
  rxSensitivityDbm: 'Receiver sensitivity',
  supplyVoltageV: 'Supply voltage',
  txCurrentA: 'Current on transmit',
  rxCurrentA: 'Current on receive',
  currentA: 'Current',
  gainDbi: 'Gain',
  lengthM: 'Length',
  feedHeightM: 'Feed point above the base',
  hpbwDeg: 'Vertical beamwidth (half power)',
  vswr: 'VSWR',
  amplifierGainDb: 'Gain of its amplifier',
  lossDb: 'Loss',
  vhfLossDb: 'Loss to the VHF set',
  fmLossDb: 'Loss to the broadcast receiver',
  gainDb: 'Gain',
  noiseFigureDb: 'Noise figure',
  voltageV: 'Voltage',
  ratingA: 'Rating',
  capacityAh: 'Capacity',
  peakPowerKw: 'Peak power, kW',
  verticalBeamDeg: 'Vertical beamwidth',
  lossK1: 'Loss k1, dB per 100 m and √MHz',
  lossK2: 'Loss k2, dB per 100 m and MHz',
  lossTolerancePercent: 'Tolerance of the loss',
  minFrequencyMhz: 'From',
  maxFrequencyMhz: 'Up to',
  impedanceOhm: 'Impedance',
  velocityFactor: 'Velocity factor',
  outsideDiameterMm: 'Outside diameter',
  bendOnceMm: 'Bend radius, once',
  massGPerM: 'Mass',
  areaMm2: 'Cross-section',
  ohmPerKm: 'Resistance',
  ampacityA: 'Ampacity',
};

const UNITS: readonly (readonly [string, Unit, number])[] = [
  ['Dbi', 'dBi', 2],
  ['Dbm', 'dBm', 0],
  ['Db', 'dB', 2],
  ['Mhz', 'MHz', 3],
  ['Percent', 'percent', 0],
  ['Ohm', 'ohm', 0],
  ['ohmPerKm', 'ohm/km', 3],
  ['GPerM', 'g/m', 0],
  ['Mm2', 'mm2', 2],
  ['Mm', 'mm', 1],
  ['Deg', 'degree', 0],
  ['Ah', 'Ah', 0],
  ['A', 'A', 2],
  ['V', 'V', 1],
  ['W', 'W', 1],
  ['M', 'm', 2],
];

/** A figure's key in plain words, with its unit and the decimals to show. A key nobody named is shown as it is. */
export function figureWords(key: string): { readonly name: string; readonly unit: Unit; readonly digits: number } {
  const [, unit, digits] = UNITS.find(([suffix]) => key.endsWith(suffix)) ?? ['', 'ratio' as const, 4];
  return { name: NAMES[key] ?? key, unit, digits };
}
