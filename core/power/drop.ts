/** Resistivity of copper as the trade reckons with, ohm mm2/m: a little above 0.01724 at 20 degrees C, for wire that is warm. */
export const COPPER_OHM_MM2_PER_M = 0.0175;

/**
 * Voltage lost in a pair of wires, V: current times resistance, out and back.
 * @param currentA current, A, >= 0
 * @param lengthM one-way length, m, >= 0
 * @param ohmPerKm resistance of one core, ohm/km, > 0
 * @throws RangeError outside those spans
 * Source: Ohm's law; per-core resistances from IEC 60228 or the AWG definition. Checked by: tests/published/conductors.test.ts
 */
export function voltageDropV(currentA: number, lengthM: number, ohmPerKm: number): number {
  if (!(currentA >= 0 && Number.isFinite(currentA)))
    throw new RangeError(`A current must be 0 A or more, not ${currentA}.`);
  if (!(lengthM >= 0 && Number.isFinite(lengthM)))
    throw new RangeError(`A length must be 0 m or more, not ${lengthM}.`);
  if (!(ohmPerKm > 0 && Number.isFinite(ohmPerKm)))
    throw new RangeError(`A resistance must be above 0, not ${ohmPerKm}.`);
  return (currentA * 2 * lengthM * ohmPerKm) / 1000;
}

/** Resistance of a copper core of this area, ohm/km. @throws RangeError when the area is not above 0 */
export function copperOhmPerKm(areaMm2: number): number {
  if (!(areaMm2 > 0 && Number.isFinite(areaMm2))) throw new RangeError(`An area must be above 0 mm2, not ${areaMm2}.`);
  return (COPPER_OHM_MM2_PER_M * 1000) / areaMm2;
}
