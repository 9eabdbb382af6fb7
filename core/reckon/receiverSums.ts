import { cascade, lossStage, type Stage, sensitivityDbm } from '../rf/cascade.ts';
import {
  carrierToNoiseDbHz,
  GAIN_WINDOWS,
  type GainWindow,
  type GnssChain,
  gnssCascade,
  LEAST_SIGNAL_DBM,
  longestCableLossDb,
  passiveRunOverDb,
  windowVerdict,
} from '../rf/gnssChain.ts';
import {
  type AtmosphericNoise,
  desenseDb,
  effectiveSensitivityDbm,
  externalNoise,
  type FieldAntenna,
  type NoiseEnvironment,
  noiseFieldDbuvPerM,
  noisePowerDbm,
  systemNoiseFigureDb,
} from '../rf/noise.ts';
import { number } from './parameters.ts';
import type { Answer, Given, Parameter, Sum } from './types.ts';

const db = (key: string, label: string, value: number): Answer => ({ key, label, value, unit: 'dB', digits: 2 });
const dbm = (key: string, label: string, value: number): Answer => ({ key, label, value, unit: 'dBm', digits: 1 });

const ENVIRONMENTS: readonly NoiseEnvironment[] = ['city', 'residential', 'rural', 'quiet-rural'];
const LIGHTNING: readonly AtmosphericNoise[] = ['none', 'moderate', 'strong', 'severe'];
const FIELD_ANTENNAS: readonly FieldAntenna[] = ['short-monopole', 'half-wave-dipole', 'isotropic'];

const choice = (key: string, label: string, choices: readonly string[], fallback: string): Parameter => ({
  key,
  label,
  unit: '',
  kind: 'text',
  choices,
  fallback,
  example: fallback,
});

const BANDWIDTH: Parameter = { ...number('hz', 'bandwidth', 'Hz', 1, 1e9, '25000'), fallback: 25_000 };

const noiseFloorSum: Sum = {
  id: 'noise-floor',
  title: 'Noise from outside, and what it leaves of a receiver',
  parameters: [
    number('mhz', 'frequency', 'MHz', 0.3, 250, '156.8'),
    choice('place', 'noise around the antenna', ENVIRONMENTS, 'residential'),
    BANDWIDTH,
    { ...number('loss', 'loss between antenna and receiver', 'dB', 0, 60, '3'), fallback: 0 },
    { ...number('nf', "receiver's noise figure", 'dB', 0, 60, '6.2'), fallback: 6.2 },
    { ...number('sensitivity', "receiver's stated sensitivity", 'dBm', -150, 0, '-119'), fallback: -119 },
    { ...number('fof2', 'critical frequency, below which no galaxy is heard', 'MHz', 0, 20, '0'), fallback: 0 },
    choice('lightning', 'lightning noise, in full to 10 MHz and gone at 20', LIGHTNING, 'none'),
    choice('antenna', 'antenna the field is stated for', FIELD_ANTENNAS, 'half-wave-dipole'),
  ],
  source:
    'ITU-R P.372: man-made and galactic noise, medians and deciles in time; lightning by category and spans from memory',
  reckon: (given) => {
    const mhz = given.number('mhz');
    const outside = externalNoise({
      environment: chosen(given, 'place', ENVIRONMENTS),
      frequencyMhz: mhz,
      foF2Mhz: given.number('fof2'),
      atmospheric: chosen(given, 'lightning', LIGHTNING),
    });
    const fieldAntenna = chosen(given, 'antenna', FIELD_ANTENNAS);
    const field = noiseFieldDbuvPerM(outside.medianDb, mhz, given.number('hz'), fieldAntenna);
    return [
      db('externalDb', 'external noise above kT0B, median', outside.medianDb),
      db('upperDb', 'exceeded a tenth of the time', outside.medianDb + outside.upperDecileDb),
      db('lowerDb', 'exceeded nine tenths of the time', outside.medianDb - outside.lowerDecileDb),
      { key: 'fieldDbuvPerM', label: 'noise field', value: field, unit: 'dBµV/m', digits: 1 },
      dbm('powerDbm', 'noise power at a lossless antenna', noisePowerDbm(outside.medianDb, given.number('hz'))),
      ...onBoard(given, outside.medianDb),
    ];
  },
};

function onBoard(given: Given, externalDb: number): readonly Answer[] {
  const chain = { externalDb, lineLossDb: given.number('loss'), receiverNoiseFigureDb: given.number('nf') };
  return [
    db('systemDb', 'noise figure of the system at the antenna', systemNoiseFigureDb(chain)),
    db('desenseDb', 'sensitivity lost to noise from outside', desenseDb(chain)),
    dbm(
      'effectiveDbm',
      'sensitivity left, at the receiver',
      effectiveSensitivityDbm(given.number('sensitivity'), chain),
    ),
  ];
}

/** The word of a list that a checked text is. */
function chosen<Word extends string>(given: Given, key: string, words: readonly Word[]): Word {
  const word = words.find((candidate) => candidate === given.text(key));
  if (word === undefined) throw new RangeError(`${key} must be one of ${words.join(', ')}.`);
  return word;
}

const cascadeSum: Sum = {
  id: 'cascade',
  title: 'Gain, noise figure and weakest level of stages in a row',
  parameters: [
    {
      key: 'stages',
      label: 'stages from the antenna on, gain:noise figure in dB with a slash between; a loss needs its gain only',
      unit: '',
      kind: 'text',
      example: '-2/18:1.5/-1/-6:8',
    },
    BANDWIDTH,
    { ...number('snr', 'signal to noise asked for', 'dB', -60, 60, '10'), fallback: 0 },
  ],
  source: 'Friis 1944, from memory; a loss at 290 K has a noise figure equal to it; worked example of a web tutorial',
  reckon: (given) => {
    const { gainDb, noiseFigureDb } = cascade(given.text('stages').split('/').map(stageOf));
    const kelvin = 290 * (10 ** (noiseFigureDb / 10) - 1);
    const weakest = sensitivityDbm(noiseFigureDb, given.number('hz'), given.number('snr'));
    return [
      db('gainDb', 'gain', gainDb),
      db('noiseFigureDb', 'noise figure', noiseFigureDb),
      { key: 'temperatureK', label: 'noise temperature', value: kelvin, unit: 'K', digits: 1 },
      dbm('weakestDbm', 'weakest level at that signal to noise', weakest),
    ];
  },
};

function stageOf(text: string): Stage {
  const [, gain, noiseFigure] = /^\s*([+-]?\d+(?:[.,]\d+)?)(?::(\d+(?:[.,]\d+)?))?\s*$/.exec(text) ?? [];
  if (gain === undefined) {
    throw new RangeError(`A stage is its gain, or gain:noise figure, such as -3.5 or 18:1.5, not "${text}".`);
  }
  const gainDb = Number(gain.replace(',', '.'));
  if (noiseFigure !== undefined) return { gainDb, noiseFigureDb: Number(noiseFigure.replace(',', '.')) };
  if (gainDb > 0) throw new RangeError(`A stage with gain needs its noise figure too, such as ${text}:1.5.`);
  return lossStage(0 - gainDb);
}

const gnssChainSum: Sum = {
  id: 'gnss-chain',
  title: 'Gain before a GNSS receiver, noise of the chain and carrier to noise density',
  parameters: [
    number('gain', 'gain of the amplifier in the antenna, 0 for a passive one', 'dB', 0, 80, '29'),
    { ...number('amplifiernf', 'noise figure of that amplifier', 'dB', 0, 20, '1.8'), fallback: 1.8 },
    { ...number('before', 'loss between element and amplifier', 'dB', 0, 20, '0'), fallback: 0 },
    number('loss', 'cable and all else between amplifier and receiver', 'dB', 0, 80, '5'),
    { ...number('nf', "receiver's noise figure", 'dB', 0, 40, '6.5'), fallback: 6.5 },
    { ...number('element', 'gain of the antenna element', 'dBi', -20, 10, '0'), fallback: 0 },
    { ...number('signal', 'level in a 0 dBi antenna', 'dBm', -170, -100, '-128.5'), fallback: LEAST_SIGNAL_DBM },
    { ...number('kelvin', 'noise temperature of the antenna', 'K', 1, 1000, '130'), fallback: 130 },
    {
      key: 'window',
      label: `net gain the receiver wants: ${Object.keys(GAIN_WINDOWS).join(', ')}, or from..to in dB`,
      unit: '',
      kind: 'text',
      fallback: 'imo',
      example: '18..36',
    },
  ],
  source:
    'Friis; windows of receiver manuals and IMO SN/Circ.227; level by IS-GPS-200F; 130 K is common practice, no source',
  reckon: (given) => {
    const chain = gnssChainOf(given);
    const window = windowOf(given.text('window'));
    const { gainDb, noiseFigureDb } = gnssCascade(chain);
    const carrier = carrierToNoiseDbHz(
      given.number('signal'),
      given.number('element'),
      noiseFigureDb,
      given.number('kelvin'),
    );
    const { shortfallDb, attenuatorDb } = windowVerdict(gainDb, window);
    const longestDb = longestCableLossDb(given.number('gain') - given.number('before'), window);
    return [
      db('netGainDb', 'net gain before the receiver', gainDb),
      db('shortfallDb', 'gain that is missing', shortfallDb),
      db('attenuatorDb', 'attenuator to put in', attenuatorDb),
      // A window without a least gain sets no limit to the cable.
      ...(longestDb === null ? [] : [db('longestLossDb', 'loss the cable may have at most', longestDb)]),
      db('passiveOverDb', 'loss before the first amplifier, beyond 3 dB', passiveRunOverDb(chain)),
      db('noiseFigureDb', 'noise figure of the chain', noiseFigureDb),
      { key: 'carrierToNoiseDbHz', label: 'carrier to noise density', value: carrier, unit: 'dB-Hz', digits: 1 },
    ];
  },
};

function gnssChainOf(given: Given): GnssChain {
  const gainDb = given.number('gain');
  return {
    beforeLossDb: given.number('before'),
    amplifier: gainDb > 0 ? { gainDb, noiseFigureDb: given.number('amplifiernf') } : null,
    afterLossDb: given.number('loss'),
    receiverNoiseFigureDb: given.number('nf'),
  };
}

function windowOf(text: string): GainWindow {
  const named = Object.entries(GAIN_WINDOWS).find(([name]) => name === text);
  if (named) return named[1];
  const [, min, max] = /^(-?\d+(?:\.\d+)?)?\.\.(-?\d+(?:\.\d+)?)?$/.exec(text) ?? [];
  if (min === undefined && max === undefined) {
    const names = Object.keys(GAIN_WINDOWS).join(', ');
    throw new RangeError(`window=${text} must be one of ${names} or a span such as 18..36, 15.. or ..40.`);
  }
  return { minDb: min === undefined ? null : Number(min), maxDb: max === undefined ? null : Number(max) };
}

export const RECEIVER_SUMS: readonly Sum[] = [noiseFloorSum, cascadeSum, gnssChainSum];
