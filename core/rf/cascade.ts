/** One stage of a receiving chain: gain (negative for a loss) and noise figure, dB. */
export interface Stage {
  readonly gainDb: number;
  readonly noiseFigureDb: number;
}

export interface CascadeResult {
  readonly gainDb: number;
  readonly noiseFigureDb: number;
}

/** A passive loss at 290 K: its noise figure equals its loss. */
export function lossStage(lossDb: number): Stage {
  return { gainDb: -lossDb, noiseFigureDb: lossDb };
}

/**
 * Gain and noise figure of stages in a row, antenna side first: F = F1 + (F2 - 1)/G1 + (F3 - 1)/(G1 G2) + ...
 * @throws RangeError when a figure is not finite or a noise figure is negative
 * Source: Friis (1944). Checked by: tests/published/mismatch.test.ts
 */
export function cascade(stages: readonly Stage[]): CascadeResult {
  let factor = 1;
  let gain = 1;
  for (const stage of stages) {
    if (!(Number.isFinite(stage.gainDb) && stage.noiseFigureDb >= 0 && Number.isFinite(stage.noiseFigureDb))) {
      throw new RangeError('A stage needs a finite gain and a noise figure of 0 dB or more.');
    }
    factor += (10 ** (stage.noiseFigureDb / 10) - 1) / gain;
    gain *= 10 ** (stage.gainDb / 10);
  }
  return { gainDb: 10 * Math.log10(gain), noiseFigureDb: 10 * Math.log10(factor) };
}

/**
 * Weakest level a receiver makes out, dBm: thermal noise at 290 K in the bandwidth, plus noise figure, plus the
 * signal-to-noise ratio asked for.
 */
export function sensitivityDbm(noiseFigureDb: number, bandwidthHz: number, signalToNoiseDb: number): number {
  if (!(bandwidthHz > 0)) throw new RangeError(`A bandwidth must be above 0 Hz, not ${bandwidthHz}.`);
  return THERMAL_DBM_PER_HZ + 10 * Math.log10(bandwidthHz) + noiseFigureDb + signalToNoiseDb;
}

/** kT0 at 290 K, dBm per Hz. */
const THERMAL_DBM_PER_HZ = 10 * Math.log10(1.380649e-23 * 290) + 30;
