import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';

/**
 * Basic transmission loss in free space between isotropic antennas, dB.
 * @param frequencyMhz carrier, MHz, > 0
 * @param distanceKm path length, km, > 0
 * @throws RangeError when either is not a positive finite number
 * Source: Rec. ITU-R P.525, 20 log(4 pi d / wavelength) with the exact constant 32.4478 (P.525 prints 32.4).
 * Checked by: tests/published/propagation.test.ts
 */
export function freeSpaceLossDb(frequencyMhz: number, distanceKm: number): number {
  requirePositive('frequencyMhz', frequencyMhz);
  requirePositive('distanceKm', distanceKm);
  return 20 * Math.log10((4 * Math.PI * distanceKm * 1000 * frequencyMhz * 1e6) / SPEED_OF_LIGHT_M_PER_S);
}

function requirePositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0, not ${value}.`);
}
