import type { Figure } from '../model/figure.ts';
import type { Conditions } from '../model/project.ts';
import { sensitivityDbm } from '../rf/cascade.ts';
import { externalNoise, type NoiseEnvironment, systemNoiseFigureDb } from '../rf/noise.ts';
import type { NoiseSum, SeaService } from './types.ts';

/** What a stated sensitivity is stated for. */
interface Reception {
  readonly bandwidthHz: number;
  readonly signalToNoiseDb: number;
  readonly words: string;
}

/**
 * A noise figure worked back takes the whole channel as the bandwidth; a real filter is narrower, which would make it a
 * decibel or two more and noise from outside matter less. So what noise spoils is rather over- than understated.
 */
const VOICE: Reception = {
  bandwidthHz: 25_000,
  signalToNoiseDb: 6,
  words: '25 kHz FM channel, 6 dB S/N (47 CFR 80.913(e))',
};
const RECEPTION: Readonly<Record<SeaService, Reception>> = {
  voice: VOICE,
  homing: VOICE,
  ais: {
    bandwidthHz: 25_000,
    signalToNoiseDb: 10,
    words: '25 kHz channel, 10 dB S/N, the co-channel rejection of IEC 62287 (from memory)',
  },
  cellular: {
    bandwidthHz: 9_000_000,
    signalToNoiseDb: -1,
    words: '50 resource blocks in 10 MHz, −1 dB S/N (3GPP TS 36.101, from memory)',
  },
  wifi: { bandwidthHz: 20_000_000, signalToNoiseDb: 4, words: '20 MHz channel, 4 dB S/N (common practice, no source)' },
};

/** Directivity of a short dipole without loss, dBi: what a smaller gain falls short of it is lost in the antenna. */
const SHORT_DIPOLE_DBI = 1.76;

/** A receiver's own noise figure, and how it is known. */
export interface ReceiverNoise {
  readonly noiseFigureDb: number;
  readonly source: string;
}

/**
 * Noise figure of a receiver, dB >= 0: as stated, else what its stated sensitivity leaves above kT0B and the
 * signal-to-noise ratio it is stated for.
 */
export function receiverNoise(service: SeaService, stated: Figure | undefined, sensitivity: Figure): ReceiverNoise {
  if (stated) return { noiseFigureDb: Math.max(0, stated.value), source: `noise figure as stated: ${stated.source}` };
  const { bandwidthHz, signalToNoiseDb, words } = RECEPTION[service];
  const noiseFigureDb = Math.max(0, sensitivity.value - sensitivityDbm(0, bandwidthHz, signalToNoiseDb));
  return { noiseFigureDb, source: `noise figure worked back from the stated sensitivity: ${words}` };
}

/** What the own receiver has before it. */
export interface ReceivingSide {
  readonly frequencyMhz: number;
  readonly sensitivityDbm: number;
  readonly receiver: ReceiverNoise;
  /** Loss the chain makes of the sensitivity, dB: below 0 behind a good amplifier. */
  readonly receiveLossDb: number;
  /** A gain below that of a short dipole is loss, which quiets noise from outside too. */
  readonly antennaGainDbi: number;
}

/**
 * Noise at the own receiver. External noise is no part of a typical range, whose promise is the stated sensitivity; it is
 * what the own-noise item of the real-life margin stands for, and is to be held against that.
 */
export function noiseSum(side: ReceivingSide, conditions: Conditions): NoiseSum {
  const { noiseFigureDb, source } = side.receiver;
  const chainNoiseFigureDb = Math.max(0, noiseFigureDb + side.receiveLossDb);
  const externalDb = externalMedianDb(conditions.noise, side.frequencyMhz);
  const heardDb = externalDb === null ? 0 : throughAntennaDb(externalDb, side.antennaGainDbi);
  const chain = { externalDb: heardDb, lineLossDb: 0, receiverNoiseFigureDb: chainNoiseFigureDb };
  const desenseDb = externalDb === null ? 0 : systemNoiseFigureDb(chain) - chainNoiseFigureDb;
  const outside =
    externalDb === null
      ? 'no law of P.372 covers the noise outside at this frequency'
      : `noise outside: Rec. ITU-R P.372, ${conditions.noise}`;
  return {
    statedDbm: side.sensitivityDbm,
    receiverNoiseFigureDb: noiseFigureDb,
    chainNoiseFigureDb,
    externalDb,
    desenseDb,
    effectiveDbm: side.sensitivityDbm + side.receiveLossDb + desenseDb,
    source: `${source}; ${outside}`,
  };
}

/** Null outside the span of the law: above 250 MHz, quiet rural above 30. */
function externalMedianDb(environment: NoiseEnvironment, frequencyMhz: number): number | null {
  const highestMhz = environment === 'quiet-rural' ? 30 : 250;
  return frequencyMhz <= highestMhz ? externalNoise({ environment, frequencyMhz }).medianDb : null;
}

/** Noise from outside at the terminals of an antenna that loses some of it, at 290 K itself. */
function throughAntennaDb(externalDb: number, gainDbi: number): number {
  const kept = 10 ** (Math.min(0, gainDbi - SHORT_DIPOLE_DBI) / 10);
  return 10 * Math.log10(kept * 10 ** (externalDb / 10) + 1 - kept);
}
