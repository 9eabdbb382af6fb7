import { groundWaveAttenuation, groundWaveFieldDbuvPerM, groundWaveLossDb } from '../propagation/groundWave.ts';
import {
  eLayerMufMhz,
  eLayerScreeningMhz,
  f2BasicMuf,
  f2MirrorHeightKm,
  hopGeometry,
  type Ionosphere,
  workingFrequencyMhz,
} from '../propagation/skyWave.ts';
import { HF_BOAT_SUMS } from './hfBoatSums.ts';
import { number } from './parameters.ts';
import type { Answer, Sum } from './types.ts';

const answer = (key: string, label: string, value: number, unit: string, digits: number): Answer => ({
  key,
  label,
  value,
  unit,
  digits,
});

const groundWaveSum: Sum = {
  id: 'ground-wave',
  title: 'Field and loss of the MF and HF ground wave, both antennas at the surface',
  parameters: [
    number('mhz', 'frequency', 'MHz', 0.01, 30, '2.182'),
    number('d', 'distance', 'km', 0.01, 10_000, '100'),
    {
      ...number('watts', 'power radiated, the set’s times the efficiency of its antenna', 'W', 1e-6, 1e6, '30'),
      fallback: 1000,
    },
    { ...number('er', 'relative permittivity of the ground', '', 1, 100, '70'), fallback: 70 },
    { ...number('sigma', 'conductivity of the ground', 'S/m', 1e-5, 10, '5'), fallback: 5 },
  ],
  source:
    'ITU-R P.368-10 over a smooth earth, refractivity 315; its loss convention: 142.0 + 20 log f − field of 1 kW radiated',
  reckon: (given) => {
    const ground = { permittivity: given.number('er'), conductivitySPerM: given.number('sigma') };
    const path = { frequencyMhz: given.number('mhz'), distanceKm: given.number('d'), ground };
    const fieldDbuvPerM = groundWaveFieldDbuvPerM(path, given.number('watts'));
    return [
      answer('fieldDbuvPerM', 'field strength', fieldDbuvPerM, 'dBµV/m', 2),
      answer('lossDb', 'basic loss, P.368 convention', groundWaveLossDb(path), 'dB', 2),
      answer('attenuationDb', 'of it by ground and curvature', groundWaveAttenuation(path).attenuationDb, 'dB', 2),
    ];
  },
};

const skyHopSum: Sum = {
  id: 'sky-hop',
  title: 'One hop by the ionosphere as you state it: angles, and the highest frequency that returns',
  parameters: [
    number('d', 'length of the hop over ground', 'km', 1, 4000, '1000'),
    number('fof2', 'critical frequency of the F2 layer', 'MHz', 0.5, 25, '8'),
    { ...number('foe', 'critical frequency of the E layer, 0 for none', 'MHz', 0, 10, '3.3'), fallback: 0 },
    { ...number('m3000', 'M(3000)F2 factor', '', 2, 4, '3'), fallback: 3 },
    { ...number('fh', 'gyrofrequency at 300 km', 'MHz', 0.5, 2, '1.2'), fallback: 1.2 },
  ],
  source:
    'ITU-R P.533 sections 3.5.1, 4 and 5 and P.1240; working frequency 0.85 of the highest, a US glossary; no level, no absorption',
  reckon: (given) => {
    const ionosphere = {
      foF2Mhz: given.number('fof2'),
      foEMhz: given.number('foe'),
      m3000: given.number('m3000'),
      gyrofrequencyMhz: given.number('fh'),
    };
    return hopAnswers(ionosphere, given.number('d'));
  },
};

function hopAnswers(ionosphere: Ionosphere, hopKm: number): readonly Answer[] {
  const { foEMhz } = ionosphere;
  const mirrorKm = f2MirrorHeightKm(ionosphere.m3000);
  const { mufMhz } = f2BasicMuf(ionosphere, hopKm);
  const hop = hopGeometry(hopKm, mirrorKm);
  const eMufMhz = eLayerMufMhz(foEMhz, hopKm);
  return [
    answer('mufMhz', 'highest frequency by F2, basic, median', mufMhz, 'MHz', 2),
    answer('workingMhz', 'working frequency, most days', workingFrequencyMhz(mufMhz), 'MHz', 2),
    answer(
      'screeningMhz',
      'below this the E layer is in the way',
      eLayerScreeningMhz(foEMhz, hop.takeoffDeg),
      'MHz',
      2,
    ),
    // Without an E layer, or too far for it, there is no such frequency.
    ...(eMufMhz === null ? [] : [answer('eLayerMufMhz', 'highest frequency by the E layer', eMufMhz, 'MHz', 2)]),
    answer('mirrorKm', 'height of the mirror', mirrorKm, 'km', 0),
    answer('takeoffDeg', 'take-off angle', hop.takeoffDeg, '°', 1),
    answer('incidenceDeg', 'angle of incidence at the mirror', hop.incidenceDeg, '°', 1),
    answer('secant', 'secant of it', hop.secant, '', 3),
    answer('slantPathKm', 'length of the path', hop.slantPathKm, 'km', 0),
    answer('delayMs', 'time on the way', hop.delayMs, 'ms', 2),
  ];
}

export const HF_SUMS: readonly Sum[] = [groundWaveSum, skyHopSum, ...HF_BOAT_SUMS];
