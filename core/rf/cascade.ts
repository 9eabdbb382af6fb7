import { addPowersDb, excessNoiseDb } from './decibels.ts';

/** One stage of a receiving chain: gain (negative for a loss) and noise figure, dB. */
export interface Stage {
  readonly gainDb: number;
  readonly noiseFigureDb: number;
}

export interface CascadeResult {
  readonly gainDb: number;
  readonly noiseFigureDb: number;
}

/** A passive loss at 290 K: its noise figure equals its loss. @throws RangeError below 0 or for no number */
export function lossStage(lossDb: number): Stage {
  if (!(lossDb >= 0 && Number.isFinite(lossDb))) throw new RangeError(`A loss must be 0 dB or more, not ${lossDb}.`);
  return { gainDb: -lossDb, noiseFigureDb: lossDb };
}

/**
 * Gain and noise figure of stages in a row, antenna side first: F = F1 + (F2 - 1)/G1 + (F3 - 1)/(G1 G2) + ...
 * Summed in decibels: two kilometres of thin cable at Wi-Fi are a loss that is too great for a plain number.
 * @throws RangeError when a figure is not finite or a noise figure is negative
 * Source: Friis (1944). Checked by: tests/published/mismatch.test.ts
 */
export function cascade(stages: readonly Stage[]): CascadeResult {
  let [gainDb, noiseFigureDb] = [0, 0];
  for (const stage of stages) {
    if (!(Number.isFinite(stage.gainDb) && stage.noiseFigureDb >= 0 && Number.isFinite(stage.noiseFigureDb))) {
      throw new RangeError('A stage needs a finite gain and a noise figure of 0 dB or more.');
    }
    noiseFigureDb = addPowersDb(noiseFigureDb, excessNoiseDb(stage.noiseFigureDb) - gainDb);
    gainDb += stage.gainDb;
  }
  return { gainDb, noiseFigureDb };
}

/**
 * Weakest level a receiver makes out, dBm: thermal noise at 290 K in the bandwidth, plus noise figure, plus the
 * signal-to-noise ratio asked for.
 * @throws RangeError when the bandwidth is not above 0 or a figure is not finite
 */
export function sensitivityDbm(noiseFigureDb: number, bandwidthHz: number, signalToNoiseDb: number): number {
  if (!(bandwidthHz > 0 && Number.isFinite(bandwidthHz)))
    throw new RangeError(`A bandwidth must be above 0 Hz, not ${bandwidthHz}.`);
  if (!(Number.isFinite(noiseFigureDb) && Number.isFinite(signalToNoiseDb)))
    throw new RangeError('A sensitivity needs a finite noise figure and a finite ratio to noise.');
  return THERMAL_DBM_PER_HZ + 10 * Math.log10(bandwidthHz) + noiseFigureDb + signalToNoiseDb;
}

/** kT0 at 290 K, dBm per Hz. */
const THERMAL_DBM_PER_HZ = 10 * Math.log10(1.380649e-23 * 290) + 30;
