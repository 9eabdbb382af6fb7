import { figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';

// Resistance is that of annealed copper at working temperature, 0.0175 ohm mm2/m over the nominal area: the figure the
// trade's drop sums use. The maxima of IEC 60228 class 5 tinned are 10 to 17 per cent higher; docs/parts.md compares.
const RESISTIVITY_OHM_MM2_PER_M = 0.0175;

const METRIC_AMPACITY = 'ISO 10133 Table A.1, 105 degrees C insulation, 30 degrees C ambient (from memory)';
const AWG_AMPACITY = '33 CFR 183.425 Table 5, 105 degrees C insulation, 30 degrees C ambient';

function conductor(
  id: string,
  name: string,
  areaMm2: number,
  ampacityA: number,
  source: string,
  awg: string | null,
): PartOf<'conductor'> {
  const ohmPerKm = (1000 * RESISTIVITY_OHM_MM2_PER_M) / areaMm2;
  return {
    id,
    kind: 'conductor',
    name,
    description: `Stranded copper pair, ${name} each way.`,
    ports: [],
    figures: {
      areaMm2: figure(
        areaMm2,
        areaMm2 * 0.02,
        awg === null ? 'standard' : 'computed',
        awg === null ? 'IEC 60228 nominal area' : 'AWG definition',
      ),
      ohmPerKm: figure(ohmPerKm, ohmPerKm * 0.1, 'computed', 'copper 0.0175 ohm mm2/m over the nominal area'),
      ampacityA: figure(ampacityA, 0, awg === null ? 'assumed' : 'standard', source),
    },
    traits: { awg },
  };
}

const METRIC: readonly (readonly [number, number])[] = [
  [0.75, 16],
  [1, 20],
  [1.5, 25],
  [2.5, 35],
  [4, 45],
  [6, 60],
  [10, 90],
  [16, 130],
  [25, 170],
  [35, 210],
  [50, 270],
  [70, 330],
  [95, 390],
  [120, 450],
];
const AWG: readonly (readonly [string, number, number])[] = [
  ['18', 0.82, 20],
  ['16', 1.31, 25],
  ['14', 2.08, 35],
  ['12', 3.31, 45],
  ['10', 5.26, 60],
  ['8', 8.37, 80],
  ['6', 13.3, 120],
  ['4', 21.15, 160],
  ['2', 33.63, 210],
  ['1', 42.41, 245],
  ['1/0', 53.48, 285],
  ['2/0', 67.43, 330],
];

export const CONDUCTORS: readonly PartOf<'conductor'>[] = [
  ...METRIC.map(([areaMm2, ampacityA]) =>
    conductor(
      `conductor-${String(areaMm2).replace('.', '-')}mm2`,
      `${areaMm2} mm²`,
      areaMm2,
      ampacityA,
      METRIC_AMPACITY,
      null,
    ),
  ),
  ...AWG.map(([size, areaMm2, ampacityA]) =>
    conductor(`conductor-awg-${size.replace('/', '-')}`, `${size} AWG`, areaMm2, ampacityA, AWG_AMPACITY, size),
  ),
];
