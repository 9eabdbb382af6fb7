import { twoRay } from '../../core/propagation/twoRay.ts';
import { type CollinearAntenna, collinearGainDbi, patternShare } from '../../core/rf/pattern.ts';

// Gain of an antenna over the sea by elevation, put together from the engine's pattern and its reflection coefficient: what the
// two-ray sum rests on, in a form that antenna solvers print.

/** Reflection coefficient at a grazing angle, as the two-ray sum has it: between equal heights at the distance that makes it. */
function reflectionAt(frequencyMhz: number, grazingRad: number): { size: number; angleRad: number } {
  let [near, far] = [0.04, 20];
  const at = (distanceKm: number) => twoRay({ frequencyMhz, h1M: 20, h2M: 20, distanceKm });
  for (let i = 0; i < 60; i += 1) {
    const middle = (near + far) / 2;
    if (at(middle).grazingRad > grazingRad) near = middle;
    else far = middle;
  }
  const { reflection, reflectionDeg } = at(near);
  return { size: reflection, angleRad: (reflectionDeg * Math.PI) / 180 };
}

/** What the reflected ray adds to or takes from the direct one, and the gain with it, dBi. */
export function gainOverSea(
  antenna: CollinearAntenna,
  frequencyMhz: number,
  heightM: number,
  elevationDeg: number,
): { gainDbi: number; raysDb: number } {
  const elevationRad = (elevationDeg * Math.PI) / 180;
  const { size, angleRad } = reflectionAt(frequencyMhz, elevationRad);
  const phase = angleRad - (4 * Math.PI * heightM * Math.sin(elevationRad) * frequencyMhz) / 299.792458;
  const raysDb = 20 * Math.log10(Math.hypot(1 + size * Math.cos(phase), size * Math.sin(phase)));
  return { gainDbi: collinearGainDbi(antenna) + 10 * Math.log10(patternShare(antenna, elevationDeg)) + raysDb, raysDb };
}
