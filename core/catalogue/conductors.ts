import { type Figure, figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';

/**
 * Resistivity of copper that is a little warm: what the trade's drop sums take. The maxima of IEC 60228 for tinned class 5
 * wire are 11 to 17 per cent higher; docs/parts.md says why the lower figure is kept.
 */
const RESISTIVITY_OHM_MM2_PER_M = 0.0175;
const COPPER = 'copper 0.0175 ohm mm2/m over the nominal area';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly area: Figure;
  readonly resistanceSource: string;
  readonly ampacity: Figure;
  readonly awg: string | null;
}

function conductor({ id, name, area, resistanceSource, ampacity, awg }: Row): PartOf<'conductor'> {
  const ohmPerKm = (1000 * RESISTIVITY_OHM_MM2_PER_M) / area.value;
  return {
    id,
    kind: 'conductor',
    name,
    description: `Stranded copper pair, ${name} each way.`,
    ports: [],
    figures: {
      areaMm2: area,
      ohmPerKm: figure(ohmPerKm, ohmPerKm * 0.1, 'computed', resistanceSource),
      ampacityA: ampacity,
    },
    traits: { awg },
  };
}

/** Area (mm2), ampacity at 105 degrees C insulation (A), IEC 60228 class 5 tinned maximum at 20 degrees C (ohm/km). */
const METRIC: readonly (readonly [areaMm2: number, ampacityA: number, tinnedOhmPerKm: number])[] = [
  [0.75, 16, 26.7],
  [1, 20, 20],
  [1.5, 25, 13.7],
  [2.5, 35, 8.21],
  [4, 45, 5.09],
  [6, 60, 3.39],
  [10, 90, 1.95],
  [16, 130, 1.24],
  [25, 170, 0.795],
  [35, 210, 0.565],
  [50, 270, 0.393],
  [70, 330, 0.277],
  [95, 390, 0.21],
  [120, 450, 0.164],
  [150, 475, 0.132],
];

function metric([areaMm2, ampacityA, tinnedOhmPerKm]: (typeof METRIC)[number]): PartOf<'conductor'> {
  return conductor({
    id: `conductor-${String(areaMm2).replace('.', '-')}mm2`,
    name: `${areaMm2} mm²`,
    area: figure(areaMm2, areaMm2 * 0.02, 'standard', 'IEC 60228 nominal area'),
    resistanceSource: `${COPPER}; IEC 60228 lets tinned class 5 wire have up to ${tinnedOhmPerKm} ohm/km`,
    ampacity: figure(
      ampacityA,
      0,
      'assumed',
      'ISO 10133 Table A.1, 105 degrees C insulation, 30 degrees C ambient; from memory',
    ),
    awg: null,
  });
}

/** Size, area by definition (mm2), ampacity at 105 degrees C insulation (A). */
const AWG: readonly (readonly [size: string, areaMm2: number, ampacityA: number])[] = [
  ['18', 0.82, 20],
  ['16', 1.31, 25],
  ['14', 2.08, 35],
  ['12', 3.31, 45],
  ['10', 5.26, 60],
  ['8', 8.37, 80],
  ['6', 13.3, 120],
  ['4', 21.15, 160],
  ['3', 26.67, 180],
  ['2', 33.63, 210],
  ['1', 42.41, 245],
  ['1/0', 53.48, 285],
  ['2/0', 67.43, 330],
  ['3/0', 85.03, 385],
  ['4/0', 107.22, 445],
];

function awg([size, areaMm2, ampacityA]: (typeof AWG)[number]): PartOf<'conductor'> {
  return conductor({
    id: `conductor-awg-${size.replace('/', '-')}`,
    name: `${size} AWG`,
    area: figure(areaMm2, areaMm2 * 0.02, 'computed', 'AWG definition'),
    resistanceSource: COPPER,
    ampacity: figure(
      ampacityA,
      0,
      'standard',
      '33 CFR 183.425 Table 5, 105 degrees C insulation, 30 degrees C ambient',
    ),
    awg: size,
  });
}

export const CONDUCTORS: readonly PartOf<'conductor'>[] = [...METRIC.map(metric), ...AWG.map(awg)];
