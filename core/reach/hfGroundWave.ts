import { groundWaveCurve } from '../propagation/groundWave.ts';

/** Reaches are looked for from here to there, km; beyond, what arrives comes by the sky. */
export const MIN_GROUND_WAVE_KM = 1;
export const MAX_GROUND_WAVE_KM = 3000;
/** Steps of the grid: 8 per doubling of the distance and a bit over; the curve between two is straight within 0.02 dB. */
const STEPS = 100;
const LOG_MAX = Math.log(MAX_GROUND_WAVE_KM / MIN_GROUND_WAVE_KM);
/** Field of 1 kW radiated at 1 km over a perfect ground, dBuV/m (P.368). */
const FIELD_1_KW_1_KM_DBUV_PER_M = 20 * Math.log10(300_000);

/** Field by distance on one frequency, reckoned where it is asked for. */
interface FieldTable {
  readonly fieldAt: (step: number) => number;
}
const tables = new Map<number, FieldTable>();
/** Frequencies kept: the channels are few, and a fuller map would mean that somebody sweeps. */
const MOST_TABLES = 50;

/**
 * How far the ground wave over sea keeps a field, km, 0 to 3000 (both ends meaning "or beyond").
 * @param frequencyMhz 0.01 to 30
 * @param radiatedW by the P.368 convention, > 0
 * @param fieldDbuvPerM least field, dB above 1 uV/m
 * @throws RangeError outside
 * Source: Rec. ITU-R P.368, see `groundWaveCurve`; between points of a fixed grid by straight lines in log distance.
 */
export function groundWaveReachKm(frequencyMhz: number, radiatedW: number, fieldDbuvPerM: number): number {
  if (!(radiatedW > 0 && Number.isFinite(radiatedW)))
    throw new RangeError(`radiatedW must be above 0, not ${radiatedW}.`);
  if (!Number.isFinite(fieldDbuvPerM)) throw new RangeError(`A field must be a finite number, not ${fieldDbuvPerM}.`);
  const { fieldAt } = tableOf(frequencyMhz);
  const wanted = fieldDbuvPerM - 10 * Math.log10(radiatedW / 1000);
  if (fieldAt(0) < wanted) return 0;
  if (fieldAt(STEPS) >= wanted) return MAX_GROUND_WAVE_KM;
  let [near, far] = [0, STEPS];
  while (far - near > 1) {
    const middle = Math.floor((near + far) / 2);
    if (fieldAt(middle) >= wanted) near = middle;
    else far = middle;
  }
  const [nearField, farField] = [fieldAt(near), fieldAt(far)];
  const step = near + (nearField - wanted) / (nearField - farField);
  return MIN_GROUND_WAVE_KM * Math.exp((LOG_MAX * step) / STEPS);
}

function tableOf(frequencyMhz: number): FieldTable {
  const known = tables.get(frequencyMhz);
  if (known) return known;
  const attenuation = groundWaveCurve({ frequencyMhz });
  const fields: number[] = [];
  const fieldAt = (step: number): number => {
    const old = fields[step];
    if (old !== undefined) return old;
    const distanceKm = MIN_GROUND_WAVE_KM * Math.exp((LOG_MAX * step) / STEPS);
    const { attenuationDb } = attenuation(distanceKm);
    const field = FIELD_1_KW_1_KM_DBUV_PER_M - 20 * Math.log10(distanceKm) - attenuationDb;
    fields[step] = field;
    return field;
  };
  if (tables.size >= MOST_TABLES) tables.clear();
  const table = { fieldAt };
  tables.set(frequencyMhz, table);
  return table;
}
