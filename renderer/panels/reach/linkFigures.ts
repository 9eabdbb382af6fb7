import type { GnssResult, SatelliteResult } from '../../../core/reach/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { megahertz } from '../pathLoss/figures.ts';

const ORBIT_WORDS: Readonly<Record<SatelliteResult['orbit'], string>> = {
  low: 'low orbit',
  medium: 'medium orbit',
  geostationary: 'geostationary',
};

/** A figure with its name, and what it means under it. */
export interface Fact {
  readonly name: string;
  readonly value: RichText;
  readonly note: string | null;
}

const signed = (db: number): RichText => [db > 0 ? '+' : '', q(db, 'dB', 1)];

/** The figures of a link in the order one asks for them; what a set does not have is left out. */
export function linkFigures(result: SatelliteResult): readonly Fact[] {
  const { change, lineLossDb, lineLimitDb, eirpDbm, gOverTDbPerK, antennaGainDbi } = result;
  const limit: RichText =
    lineLimitDb === null ? [', no limit known'] : [' of ', q(lineLimitDb, 'dB', 1), ' its maker allows'];
  return [
    { name: 'Orbit', value: [ORBIT_WORDS[result.orbit], ', ', megahertz(result.frequencyMhz)], note: null },
    ...(result.pathId === null ? [] : [{ name: 'Line loss', value: [q(lineLossDb, 'dB', 1), ...limit], note: null }]),
    { name: 'Antenna gain', value: [q(antennaGainDbi, 'dBi', 1)], note: null },
    ...(change === null
      ? []
      : [
          { name: 'Sending', value: signed(change.transmitDb), note: 'against the terminal’s own antenna' },
          { name: 'Receiving', value: signed(change.receiveDb), note: 'against it, with the noise the line adds' },
          {
            name: 'Break-even',
            value: [q(change.breakEvenLossDb, 'dB', 1)],
            note: 'line loss at which the outside antenna is no better than none',
          },
        ]),
    ...(eirpDbm === null
      ? []
      : [{ name: 'e.i.r.p.', value: [q(eirpDbm, 'dBm', 1)], note: 'sent towards the satellite' }]),
    ...(gOverTDbPerK === null
      ? []
      : [{ name: 'G/T', value: [q(gOverTDbPerK, 'dB', 1), '/K'], note: 'gain over noise: how well it hears' }]),
  ];
}

/** The window in words: `between 10 dB and 30 dB`. */
export function windowWords(window: GnssResult['window']): RichText {
  const { minDb = null, maxDb = null } = window ?? {};
  if (minDb !== null && maxDb !== null) return ['between ', q(minDb, 'dB', 0), ' and ', q(maxDb, 'dB', 0)];
  if (minDb !== null) return ['at least ', q(minDb, 'dB', 0)];
  if (maxDb !== null) return ['at most ', q(maxDb, 'dB', 0)];
  return ['not stated by its maker'];
}

/** The figures of a receiver in the order one asks for them; what does not apply is left out. */
export function gnssFigures(result: GnssResult): readonly Fact[] {
  const { netGainDb, noiseFigureDb, carrierToNoiseDbHz, window } = result;
  return [
    ...(netGainDb === null
      ? []
      : [
          { name: 'Net gain', value: [q(netGainDb, 'dB', 1)], note: 'amplifier less cable, connectors and splitters' },
          { name: 'Receiver wants', value: windowWords(window), note: null },
        ]),
    ...(noiseFigureDb === null
      ? []
      : [
          {
            name: 'Noise figure',
            value: [q(noiseFigureDb, 'dB', 1)],
            note: 'of the whole chain; the first amplifier decides',
          },
        ]),
    ...(carrierToNoiseDbHz === null
      ? []
      : [
          {
            name: 'C/N0',
            value: [q(carrierToNoiseDbHz, 'dB', 1), '-Hz'],
            note: 'of the weakest satellite the system promises, under an open sky; 35 and more serves well (common practice)',
          },
        ]),
  ];
}

/** The first sentence of a text, and what follows. A full stop inside a quantity is no end: it is no piece of the words. */
export function firstSentence(text: RichText): readonly [first: RichText, rest: RichText] {
  const index = text.findIndex((piece) => typeof piece === 'string' && /\.(\s|$)/.test(piece));
  const piece = text[index];
  if (typeof piece !== 'string') return [text, []];
  const end = piece.search(/\.(\s|$)/) + 1;
  const rest = [piece.slice(end).trimStart(), ...text.slice(index + 1)].filter((each) => each !== '');
  return [[...text.slice(0, index), piece.slice(0, end)], rest];
}
