import { type CascadeResult, cascade, lossStage, type Stage } from './cascade.ts';

/** Gain a receiver wants before its socket: amplifier less everything between, dB. Either end may be open. */
export interface GainWindow {
  readonly minDb: number | null;
  readonly maxDb: number | null;
}

/**
 * Windows as makers print them. They differ by more than 20 dB, so the receiver's own manual counts before any of these.
 * Source: the manual or rule named beside each, read.
 */
export const GAIN_WINDOWS = {
  /** Open AIS handbook, section 32.5.3, citing IMO SN/Circ.227. */
  imo: { minDb: 10, maxDb: 20 },
  /** Class A AIS installation manual, 3.11.2: the same rule with another number. */
  'ais-class-a': { minDb: 0, maxDb: 10 },
  /** Class B AIS manual, appendix A: after cable and connectors. */
  'ais-class-b': { minDb: 25, maxDb: null },
  /** Timing receiver user guide, page 10. */
  timing: { minDb: 15, maxDb: null },
  /** OEM receiver user guide, figure 4.7. */
  oem: { minDb: 18, maxDb: 36 },
  /** Survey receiver application note APN077, older sets. */
  survey: { minDb: null, maxDb: 40 },
} as const satisfies Readonly<Record<string, GainWindow>>;

/** Loss that may lie before the first amplifier, dB (GNSS manual, appendix C.1, read). */
const PASSIVE_RUN_LIMIT_DB = 3;
/** Least GPS L1 C/A level in a 0 dBi circular antenna, dBm (IS-GPS-200F 3.3.1.6: -158.5 dBW, read as quoted). */
export const LEAST_SIGNAL_DBM = -128.5;
/** Boltzmann's constant as a level, dBm per Hz and K. */
const BOLTZMANN_DBM = 10 * Math.log10(1.380649e-23) + 30;
const REFERENCE_K = 290;

/** From antenna element to receiver; a passive antenna has no amplifier. */
export interface GnssChain {
  /** Loss between element and amplifier, such as a filter. The cable of a passive antenna counts as `afterLossDb`. */
  readonly beforeLossDb: number;
  readonly amplifier: Stage | null;
  /** Cable, connectors, splitter and attenuator between amplifier and receiver. */
  readonly afterLossDb: number;
  readonly receiverNoiseFigureDb: number;
}

/** Where a net gain lies against a window, and what brings it inside. */
export interface WindowVerdict {
  readonly verdict: 'too little' | 'inside' | 'too much';
  /** Gain that is missing, dB; 0 unless too little. */
  readonly shortfallDb: number;
  /** Attenuator to put in, dB; 0 unless too much. */
  readonly attenuatorDb: number;
}

/**
 * Net gain before the receiver and noise figure of element to receiver, by Friis.
 * @throws RangeError for a negative loss or noise figure
 * Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function gnssCascade(chain: GnssChain): CascadeResult {
  const receiver = { gainDb: 0, noiseFigureDb: chain.receiverNoiseFigureDb };
  const amplifier = chain.amplifier ? [chain.amplifier] : [];
  return cascade([lossStage(chain.beforeLossDb), ...amplifier, lossStage(chain.afterLossDb), receiver]);
}

/**
 * Carrier to noise density, dB-Hz: level at 0 dBi, plus gain of the element, less k (Ta + 290 (F - 1)). An estimate: the
 * receiver's own losses of filter and bits (1 dB or so, from memory) are not in it.
 * @param antennaTemperatureK sky, sea and deck as the element hears them; 130 K under open sky (common practice, no source)
 * @throws RangeError outside 0 to 10 000 K, for figures that are not finite, or where nothing makes noise
 * Checked by: tests/published/satelliteAndGnss.test.ts
 */
export function carrierToNoiseDbHz(
  signalDbm: number,
  elementGainDbi: number,
  noiseFigureDb: number,
  antennaTemperatureK: number,
): number {
  if (!(antennaTemperatureK >= 0 && antennaTemperatureK <= 10_000)) {
    throw new RangeError(`An antenna temperature must be 0 to 10000 K, not ${antennaTemperatureK}.`);
  }
  if (!(noiseFigureDb >= 0)) throw new RangeError(`A noise figure must be 0 dB or more, not ${noiseFigureDb}.`);
  const temperatureK = antennaTemperatureK + REFERENCE_K * (10 ** (noiseFigureDb / 10) - 1);
  const levelDbm = signalDbm + elementGainDbi;
  if (!(temperatureK > 0 && Number.isFinite(temperatureK) && Number.isFinite(levelDbm))) {
    throw new RangeError('A signal level, a gain and a noise temperature above 0 K are needed, all finite.');
  }
  return levelDbm - BOLTZMANN_DBM - 10 * Math.log10(temperatureK);
}

/** Where a net gain lies against a receiver's window. @throws RangeError for no finite gain or a window upside down */
export function windowVerdict(netGainDb: number, window: GainWindow): WindowVerdict {
  const { minDb, maxDb } = window;
  if (!Number.isFinite(netGainDb)) throw new RangeError(`A net gain must be a finite number, not ${netGainDb}.`);
  if (minDb !== null && maxDb !== null && minDb > maxDb) {
    throw new RangeError(`A gain window must not end below its start: ${minDb} to ${maxDb} dB.`);
  }
  const shortfallDb = minDb === null ? 0 : Math.max(0, minDb - netGainDb);
  const attenuatorDb = maxDb === null ? 0 : Math.max(0, netGainDb - maxDb);
  const verdict = shortfallDb > 0 ? 'too little' : attenuatorDb > 0 ? 'too much' : 'inside';
  return { verdict, shortfallDb, attenuatorDb };
}

/**
 * Loss before the first amplifier, wherever that is, beyond the 3 dB a manual allows, dB; 0 within it.
 * @throws RangeError for a negative loss
 */
export function passiveRunOverDb({ beforeLossDb, amplifier, afterLossDb }: GnssChain): number {
  const passiveDb = lossStage(beforeLossDb).noiseFigureDb + (amplifier ? 0 : lossStage(afterLossDb).noiseFigureDb);
  return Math.max(0, passiveDb - PASSIVE_RUN_LIMIT_DB);
}

/**
 * Loss that may lie between amplifier and receiver, dB: gain less the least wanted; null where the window has no least.
 * @throws RangeError when the gain is not finite
 */
export function longestCableLossDb(gainDb: number, window: GainWindow): number | null {
  if (!Number.isFinite(gainDb)) throw new RangeError(`A gain must be a finite number, not ${gainDb}.`);
  return window.minDb === null ? null : Math.max(0, gainDb - window.minDb);
}
