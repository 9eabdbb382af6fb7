import { type Basis, figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';

// Loss coefficients and properties of coaxial cable. Fits are relative least squares on published points at 10 MHz and
// above; docs/parts.md lists where the sources disagree. Bend radius and mass are from memory where not marked otherwise.

const FIT = 'least-squares fit to published table points, see docs/parts.md';
const OPEN_TABLE = 'open coefficient table built from makers’ data sheets';
const MAKER = 'maker’s attenuation equation, low-loss foil+braid series';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly k1: number;
  readonly k2: number;
  readonly source: string;
  readonly basis: Basis;
  readonly tolerancePercent: number;
  readonly maxMhz: number;
  readonly ohm: number;
  readonly velocity: number;
  readonly odMm: number;
  readonly bendMm: number;
  readonly gPerM: number;
}

const row = (
  id: string,
  name: string,
  use: string,
  [k1, k2, source, basis, tolerancePercent, maxMhz]: readonly [number, number, string, Basis, number, number],
  [ohm, velocity, odMm, bendMm, gPerM]: readonly [number, number, number, number, number],
): Row => ({ id, name, use, k1, k2, source, basis, tolerancePercent, maxMhz, ohm, velocity, odMm, bendMm, gPerM });

const ROWS: readonly Row[] = [
  row(
    'coax-rg-174-u',
    'RG-174/U',
    'Thin solid-dielectric coax; antenna pigtails only',
    [2.4991, 0.03133, OPEN_TABLE, 'data-sheet', 15, 3000],
    [50, 0.66, 2.55, 13, 12],
  ),
  row(
    'coax-rg-58c-u',
    'RG-58C/U',
    'Thin stranded coax; short pigtails and captive leads',
    [1.3137, 0.02898, FIT, 'data-sheet', 5, 3000],
    [50, 0.66, 4.95, 25, 38],
  ),
  row(
    'coax-rg-58-u',
    'RG-58/U',
    'Thin solid-centre coax',
    [1.1602, 0.01726, OPEN_TABLE, 'data-sheet', 10, 3000],
    [52, 0.66, 4.95, 25, 37],
  ),
  row(
    'coax-rg-8x',
    'RG-8X',
    'Medium foam coax, the usual mast cable of small craft',
    [0.9697, 0.01666, FIT, 'data-sheet', 10, 3000],
    [50, 0.82, 6.1, 30, 52],
  ),
  row(
    'coax-rg-59b-u',
    'RG-59B/U',
    '75 ohm television coax; does not belong in a 50 ohm feeder',
    [1.0523, 0.00571, OPEN_TABLE, 'data-sheet', 10, 3000],
    [75, 0.66, 6.15, 30, 55],
  ),
  row(
    'coax-rg-59-u-foam',
    'RG-59/U foam',
    '75 ohm television coax, foam',
    [0.9721, 0.00482, OPEN_TABLE, 'data-sheet', 10, 3000],
    [75, 0.78, 6.15, 30, 50],
  ),
  row(
    'coax-rg-6-u',
    'RG-6/U',
    '75 ohm television coax, low loss',
    [0.4716, 0.00701, FIT, 'data-sheet', 15, 3000],
    [75, 0.83, 6.9, 35, 60],
  ),
  row(
    'coax-rg-8-u',
    'RG-8/U',
    'Thick solid-dielectric coax, 52 ohm',
    [0.5553, 0.00669, OPEN_TABLE, 'data-sheet', 10, 3000],
    [52, 0.66, 10.3, 52, 155],
  ),
  row(
    'coax-rg-8-semi-air',
    'RG-8 semi-air',
    'Thick semi-air coax; keep the ends dry',
    [0.3953, 0.00216, OPEN_TABLE, 'data-sheet', 10, 3000],
    [50, 0.84, 10.3, 76, 130],
  ),
  row(
    'coax-rg-213-u',
    'RG-213/U',
    'Thick solid-dielectric coax',
    [0.6231, 0.00709, OPEN_TABLE, 'data-sheet', 7, 3000],
    [50, 0.66, 10.29, 52, 155],
  ),
  row(
    'coax-rg-214-u',
    'RG-214/U',
    'Thick double-screened coax, same conductor and dielectric as RG-213/U',
    [0.6231, 0.00709, `${OPEN_TABLE} (RG-213/U pair)`, 'data-sheet', 10, 3000],
    [50, 0.66, 10.8, 54, 190],
  ),
  row(
    'coax-195-class',
    '195-class foil+braid',
    'Thin low-loss coax',
    [1.1539, 0.002, FIT, 'data-sheet', 5, 6000],
    [50, 0.8, 4.95, 13, 31],
  ),
  row(
    'coax-200-class',
    '200-class foil+braid',
    'Thin low-loss coax',
    [1.0528, 0.00108, MAKER, 'data-sheet', 4, 6000],
    [50, 0.83, 4.95, 13, 33],
  ),
  row(
    'coax-240-class',
    '240-class foil+braid',
    'Medium low-loss coax, bends like RG-8X',
    [0.7942, 0.00108, MAKER, 'data-sheet', 4, 6000],
    [50, 0.84, 6.1, 19, 51],
  ),
  row(
    'coax-300-class',
    '300-class foil+braid',
    'Low-loss coax',
    [0.6451, 0.00059, `${OPEN_TABLE}, three-term, DC term dropped`, 'data-sheet', 6, 6000],
    [50, 0.85, 7.62, 22, 82],
  ),
  row(
    'coax-400-class',
    '400-class foil+braid',
    'Thick low-loss coax for mast runs',
    [0.4012, 0.00085, MAKER, 'data-sheet', 4, 6000],
    [50, 0.85, 10.29, 25.4, 100],
  ),
  row(
    'coax-400-class-flex',
    '400-class flex, stranded centre',
    'As 400-class, stranded; bends again and again',
    [0.4435, 0.00317, FIT, 'data-sheet', 8, 3000],
    [50, 0.85, 10.29, 25.4, 110],
  ),
  row(
    'coax-500-class',
    '500-class foil+braid',
    'Thick low-loss coax',
    [0.3095, 0.00109, `${OPEN_TABLE}, three-term, DC term dropped`, 'data-sheet', 6, 6000],
    [50, 0.86, 12.7, 32, 144],
  ),
  row(
    'coax-600-class',
    '600-class foil+braid',
    'Very thick low-loss coax',
    [0.2479, 0.00085, MAKER, 'data-sheet', 4, 6000],
    [50, 0.87, 14.99, 38, 195],
  ),
  row(
    'coax-half-inch-foam',
    '1/2-inch corrugated foam',
    'Corrugated copper line; stiff',
    [0.211, 0.00062, OPEN_TABLE, 'data-sheet', 5, 6000],
    [50, 0.88, 15.9, 51, 220],
  ),
];

const HF_LEAD_IN: Row = row(
  'lead-in-hv-single',
  'Single-core HV lead-in',
  'High-voltage single wire from tuner to HF antenna; it radiates, so it counts as part of the antenna and has no loss of its own here',
  [0, 0, 'part of the antenna, not a transmission line', 'assumed', 0, 30],
  [50, 0.95, 9, 50, 120],
);

const PROPERTIES = 'open cable tables and makers’ sheets; bend radius and mass partly from memory';

function part(cable: Row): PartOf<'coax'> {
  const property = (value: number, tolerance: number) => figure(value, tolerance, 'data-sheet', PROPERTIES);
  const loss = (value: number) => figure(value, (value * cable.tolerancePercent) / 100, cable.basis, cable.source);
  return {
    id: cable.id,
    kind: 'coax',
    name: cable.name,
    description: `${cable.use}.`,
    ports: [],
    figures: {
      lossK1: loss(cable.k1),
      lossK2: loss(cable.k2),
      lossTolerancePercent: figure(
        cable.tolerancePercent,
        0,
        'computed',
        'scatter of the published points about the fit',
      ),
      minFrequencyMhz: figure(1, 0, 'computed', 'below 10 MHz the two-term form reads low'),
      maxFrequencyMhz: figure(
        cable.maxMhz,
        0,
        'computed',
        'end of the published points; RG types above 1 GHz are extrapolated',
      ),
      impedanceOhm: property(cable.ohm, 2),
      velocityFactor: property(cable.velocity, 0.03),
      outsideDiameterMm: property(cable.odMm, 0.2),
      bendOnceMm: property(cable.bendMm, 0),
      massGPerM: property(cable.gPerM, cable.gPerM * 0.1),
    },
    traits: {},
  };
}

export const COAX: readonly PartOf<'coax'>[] = [...ROWS, HF_LEAD_IN].map(part);
