import { gOverTDbPerK, marginChange, satellitePathLossDb, satelliteSight } from '../propagation/satellite.ts';
import {
  type CollinearAntenna,
  collinearGainDbi,
  collinearLengthM,
  elevationSeenDeg,
  halfPowerWidthDeg,
  heeledGainDbi,
  polarisationLossDb,
  tiltLossByWidthDb,
  tiltLossDb,
} from '../rf/pattern.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { number } from './parameters.ts';
import type { Answer, Given, Sum } from './types.ts';

const answer = (key: string, label: string, value: number, unit: string, digits: number): Answer => ({
  key,
  label,
  value,
  unit,
  digits,
});

const tiltLossSum: Sum = {
  id: 'tilt-loss',
  title: 'What heel costs a whip towards a station on the horizon',
  parameters: [
    number('elements', 'number of half-wave elements in the whip', '', 1, 16, '4'),
    number('width', 'half-power width of the whip', '°', 1, 180, '17'),
    { ...number('pitch', 'distance between their centres in wavelengths', '', 0.5, 1, '0.75'), fallback: 0.5 },
    number('heel', 'lean of the antenna', '°', 0, 90, '15'),
    {
      ...number('azimuth', 'bearing of the station from the side it heels to', '°', -180, 180, '0'),
      fallback: 0,
    },
    { ...number('mhz', 'frequency', 'MHz', 30, 6000, '156.8'), fallback: 156.8 },
  ],
  oneOf: ['elements', 'width'],
  source:
    'half-wave pattern times uniform array, as in any antenna handbook, checked by the method of moments; by width 12·(θ/B)², from memory; nulls filled to 20 dB, common practice',
  reckon: (given) => {
    const heel = { heelDeg: given.number('heel'), azimuthDeg: given.number('azimuth') };
    const elevationDeg = elevationSeenDeg(heel);
    const polarisationDb = polarisationLossDb(heel);
    const patternDb = given.has('elements')
      ? tiltLossDb(whipOf(given), elevationDeg)
      : tiltLossByWidthDb(given.number('width'), elevationDeg);
    return [
      answer('elevationDeg', 'angle off its broadside at which it sees the horizon', elevationDeg, '°', 1),
      answer('patternDb', 'loss by the pattern', patternDb, 'dB', 2),
      answer('polarisationDb', 'loss by polarisation', polarisationDb, 'dB', 2),
      answer('tiltLossDb', 'loss by heel', patternDb + polarisationDb, 'dB', 2),
      ...(given.has('elements') ? whipAnswers(given) : []),
    ];
  },
};

const whipOf = (given: Given): CollinearAntenna => ({
  elements: given.number('elements'),
  pitchWavelengths: given.number('pitch'),
});

/** What only the build of the whip can tell; a width alone cannot. */
function whipAnswers(given: Given): readonly Answer[] {
  const whip = whipOf(given);
  const heel = { heelDeg: given.number('heel'), azimuthDeg: given.number('azimuth') };
  const lengthM = collinearLengthM(whip, SPEED_OF_LIGHT_M_PER_S / (given.number('mhz') * 1e6));
  return [
    answer('gainDbi', 'gain upright, lossless', collinearGainDbi(whip), 'dBi', 2),
    answer('heeledGainDbi', 'gain at this heel', heeledGainDbi(whip, heel), 'dBi', 2),
    answer('widthDeg', 'half-power width', halfPowerWidthDeg(whip), '°', 1),
    answer('lengthM', 'length of the radiating part', lengthM, 'm', 2),
  ];
}

const satelliteMarginSum: Sum = {
  id: 'sat-margin',
  title: "What an outside antenna adds to a satellite terminal over the terminal's own",
  parameters: [
    number('gain', 'gain of the outside antenna towards the satellite', 'dBi', -20, 40, '3'),
    number('loss', 'cable, connectors and arrestor', 'dB', 0, 40, '3'),
    { ...number('own', "gain of the terminal's own antenna", 'dBi', -20, 40, '0'), fallback: 0 },
    { ...number('hidden', 'loss through deck or rigging to the own antenna', 'dB', 0, 60, '0'), fallback: 0 },
    { ...number('nf', "receiver's noise figure", 'dB', 0, 30, '2'), fallback: 2 },
    { ...number('kelvin', 'noise temperature of either antenna', 'K', 1, 1000, '130'), fallback: 130 },
    { ...number('mhz', 'frequency', 'MHz', 100, 40_000, '1621'), fallback: 1621 },
    { ...number('km', 'height of the satellite', 'km', 100, 100_000, '780'), fallback: 780 },
    { ...number('elevation', 'elevation of the satellite', '°', 0, 90, '20'), fallback: 20 },
  ],
  source:
    'ITU-R P.525 over the slant range; G/T by Friis, line at 290 K; noise figure and temperature are common practice, no source',
  reckon: (given) => {
    const receiver = { receiverNoiseFigureDb: given.number('nf'), antennaTemperatureK: given.number('kelvin') };
    const outside = { antennaGainDbi: given.number('gain'), lineLossDb: given.number('loss'), ...receiver };
    const own = { antennaGainDbi: given.number('own'), lineLossDb: 0, ...receiver };
    const change = marginChange({
      outsideGainDbi: outside.antennaGainDbi,
      lineLossDb: outside.lineLossDb,
      ownGainDbi: own.antennaGainDbi,
      ownObstructionDb: given.number('hidden'),
      ...receiver,
    });
    const [mhz, km, elevation] = [given.number('mhz'), given.number('km'), given.number('elevation')];
    return [
      answer('transmitDb', 'change of margin sending', change.transmitDb, 'dB', 2),
      answer('receiveDb', 'change of margin receiving', change.receiveDb, 'dB', 2),
      answer('breakEvenLossDb', 'line loss at which sending gains nothing', change.breakEvenLossDb, 'dB', 2),
      answer('outsideGtDbPerK', 'G/T of the outside antenna', gOverTDbPerK(outside), 'dB/K', 2),
      answer('ownGtDbPerK', 'G/T of the own antenna in the open', gOverTDbPerK(own), 'dB/K', 2),
      answer('slantKm', 'slant range', satelliteSight(km, elevation).slantRangeKm, 'km', 0),
      answer('pathLossDb', 'free-space loss', satellitePathLossDb(mhz, km, elevation), 'dB', 2),
    ];
  },
};

export const AIM_SUMS: readonly Sum[] = [tiltLossSum, satelliteMarginSum];
