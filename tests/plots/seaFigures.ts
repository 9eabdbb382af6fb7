import { freeSpaceLossDb } from '../../core/propagation/freeSpace.ts';
import { groundWaveCurve, groundWaveFieldDbuvPerM } from '../../core/propagation/groundWave.ts';
import { type SeaPath, seaPathLossDb, sphericalEarthLoss } from '../../core/propagation/sphericalEarth.ts';
import { seaMedianLoss } from '../../core/propagation/troposcatter.ts';
import { twoRay } from '../../core/propagation/twoRay.ts';
import { cell, type Row, readTable } from '../published/table.ts';
import { type Axis, drawChart, type Point, type Series } from './chart.ts';
import { type Figure, line, points, rowsWhere, steps, worstText } from './figures.ts';

const KM: Axis = { label: 'distance, km', from: 1, to: 150, isLog: true, ticks: [1, 2, 5, 10, 20, 50, 100] };
const pathOf = (row: Row): SeaPath => ({
  frequencyMhz: cell(row, 'frequencyMhz'),
  distanceKm: cell(row, 'distanceKm'),
  h1M: cell(row, 'h1M'),
  h2M: cell(row, 'h2M'),
});

/** Loss over distance for one pair of heights, the lines of the engine and what other models say of the same paths. */
function smoothSea(file: string, frequencyMhz: number, h1M: number, h2M: number): Figure {
  const draw = (): string => {
    const at = steps(1, 150, 240, true);
    const pair = { frequencyMhz, h1M, h2M };
    const vectors = rowsWhere('seaDiffraction.csv', pair);
    const median = readTable('seaMedian.csv').filter(
      (row) => row.frequencyMhz === String(frequencyMhz) && row.h1M === String(h1M) && row.h2M === String(h2M),
    );
    const itm = rowsWhere('seaIrregularTerrainModel.csv', pair).map((row): Point => {
      const distanceKm = cell(row, 'distanceKm');
      return [distanceKm, cell(row, 'referenceAttenuationDb') + freeSpaceLossDb(frequencyMhz, distanceKm)];
    });
    const all = readTable('seaDiffraction.csv');
    const off = all.map((row) => [seaPathLossDb(pathOf(row)), cell(row, 'lossDb')] as const);
    const horizonKm = sphericalEarthLoss({ ...pair, distanceKm: 1 }).horizonKm;
    const series: readonly Series[] = [
      line('free space', 5, at, (distanceKm) => freeSpaceLossDb(frequencyMhz, distanceKm), 'dotted'),
      line('smooth sea (P.526)', 0, at, (distanceKm) => seaPathLossDb({ ...pair, distanceKm })),
      line('with scatter (P.1812)', 1, at, (distanceKm) => seaMedianLoss({ ...pair, distanceKm }).lossDb, 'dashed'),
      {
        label: 'horizon',
        colour: 4,
        as: 'dotted',
        points: [
          [horizonKm, 70],
          [horizonKm, 220],
        ],
      },
      { label: 'P.526 vectors', colour: 0, as: 'circle', points: points(vectors, 'distanceKm', 'lossDb') },
      {
        label: 'P.1812-8 reference code',
        colour: 1,
        as: 'square',
        points: points(median, 'distanceKm', 'p1812CodeDb'),
      },
      {
        label: 'full-wave theory',
        colour: 2,
        as: 'triangle',
        points: points(rowsWhere('seaFullWave.csv', pair), 'distanceKm', 'lossDb'),
      },
      { label: 'Irregular Terrain Model', colour: 3, as: 'cross', points: itm },
    ].filter((one) => one.points.length > 0) as readonly Series[];
    return drawChart({
      title: `Loss over smooth sea, ${frequencyMhz} MHz, vertical, ${h1M} m to ${h2M} m`,
      x: KM,
      y: { label: 'basic transmission loss, dB (less is up)', from: 220, to: 70 },
      series,
      caption: [
        `Worst error against all ${all.length} P.526 vectors, of which these heights have ${vectors.length}: ${worstText(off, 'dB')}.`,
        'Full-wave theory and the Irregular Terrain Model are other models: a comparison, not an expectation.',
      ],
    });
  };
  return { file, draw };
}

const others: Figure = {
  file: 'smooth-sea-others.svg',
  draw: () => {
    const difference = (row: Row, lossDb: number): Point => [
      cell(row, 'distanceKm'),
      lossDb - seaPathLossDb(pathOf(row)),
    ];
    const relative = (row: Row, column: string): Point =>
      difference(row, cell(row, column) + freeSpaceLossDb(cell(row, 'frequencyMhz'), cell(row, 'distanceKm')));
    const full = readTable('seaFullWave.csv').map((row) => difference(row, cell(row, 'lossDb')));
    const itm = readTable('seaIrregularTerrainModel.csv')
      .filter(({ mode }) => mode !== 'troposcatter')
      .map((row) => relative(row, 'referenceAttenuationDb'));
    const p1546 = readTable('seaP1546.csv').map((row) => relative(row, 'attenuationDb'));
    const span = (all: readonly Point[]): string =>
      `${Math.min(...all.map(([, y]) => y)).toFixed(1)} to ${Math.max(...all.map(([, y]) => y)).toFixed(1)}`.replaceAll(
        '-',
        '−',
      );
    return drawChart({
      title: 'Other models of the sea less the smooth-sea model, all heights and frequencies',
      x: KM,
      y: { label: 'other model less P.526, dB', from: -8, to: 8 },
      series: [
        { label: 'full-wave theory', colour: 2, as: 'triangle', points: full },
        { label: 'Irregular Terrain Model', colour: 3, as: 'cross', points: itm },
        { label: 'P.1546 curves, 100 MHz', colour: 1, as: 'square', points: p1546 },
        line('the 4 dB carried', 5, [1, 150], () => 4, 'dashed'),
        line('', 5, [1, 150], () => -4, 'dashed'),
      ],
      caption: [
        `Full wave ${span(full)} dB, Irregular Terrain Model ${span(itm)} dB without its scatter, P.1546 ${span(p1546)} dB.`,
        'The spread of the models among each other is the reason for the tolerance of 4 dB that a range carries.',
      ],
    });
  },
};

const twoRays: Figure = {
  file: 'two-rays.svg',
  draw: () => {
    const pair = { frequencyMhz: 156.8, h1M: 20, h2M: 20 };
    const at = steps(0.3, 20, 300, true);
    const holds = at.filter((distanceKm) => twoRay({ ...pair, distanceKm }).validity === 'holds');
    const rows = rowsWhere('twoRaySea.csv', { ...pair, roughnessM: 0 });
    const off = rows.map((row) => [twoRay(pathOf(row)).withSurfaceWaveDb, cell(row, 'surfaceWaveDb')] as const);
    const full = rows.filter((row) => twoRay(pathOf(row)).validity === 'holds');
    const fullOff = full.map((row) => [twoRay(pathOf(row)).withSurfaceWaveDb, cell(row, 'fullWaveDb')] as const);
    return drawChart({
      title: 'Fine structure inside the horizon, 156.8 MHz, vertical, 20 m to 20 m over sea',
      x: { label: 'distance, km', from: 0.3, to: 20, isLog: true, ticks: [0.3, 0.5, 1, 2, 5, 10, 20] },
      y: { label: 'loss relative to free space, dB (less is up)', from: 26, to: -6 },
      series: [
        line('two rays', 0, holds, (distanceKm) => twoRay({ ...pair, distanceKm }).lossDb, 'dashed'),
        line('with surface wave', 0, holds, (distanceKm) => twoRay({ ...pair, distanceKm }).withSurfaceWaveDb),
        line(
          'beyond its validity',
          1,
          at.filter((km) => km >= (holds.at(-1) ?? 0)),
          (distanceKm) => twoRay({ ...pair, distanceKm }).withSurfaceWaveDb,
          'dotted',
        ),
        line('smooth sea (P.526)', 3, at, (distanceKm) => sphericalEarthLoss({ ...pair, distanceKm }).lossDb),
        { label: 'vectors, two rays', colour: 0, as: 'circle', points: points(rows, 'distanceKm', 'lossDb') },
        { label: 'full-wave theory', colour: 2, as: 'triangle', points: points(rows, 'distanceKm', 'fullWaveDb') },
      ],
      caption: [
        `Worst error against the vectors shown: ${worstText(off, 'dB')}; against full-wave theory where the sum holds: ${worstText(fullOff, 'dB')}.`,
        'Where the sum ends it does not meet the smooth-sea model, so ranges never use it.',
      ],
    });
  },
};

const groundWave: Figure = {
  file: 'ground-wave.svg',
  draw: () => {
    const rows = readTable('groundWaveSea.csv');
    const frequencies = [2.182, 4.125, 8.291, 12.29, 16.42];
    const fieldAt = (frequencyMhz: number) => {
      const curve = groundWaveCurve({ frequencyMhz });
      return (km: number) => 20 * Math.log10(300_000) - 20 * Math.log10(km) - curve(km).attenuationDb;
    };
    const off = rows.map((row) => {
      const path = { frequencyMhz: cell(row, 'frequencyMhz'), distanceKm: cell(row, 'distanceKm') };
      return [groundWaveFieldDbuvPerM(path, 1000), cell(row, 'fieldDbuvPerM')] as const;
    });
    const one = (frequencyMhz: number, colour: number): Series[] => {
      const own = rows.filter((row) => cell(row, 'frequencyMhz') === frequencyMhz);
      return [
        line(`${frequencyMhz} MHz`, colour, steps(10, 1000, 120, true), fieldAt(frequencyMhz)),
        { label: 'code of P.368-10', colour, as: 'circle', points: points(own, 'distanceKm', 'fieldDbuvPerM') },
      ];
    };
    return drawChart({
      title: 'Ground wave over sea, 1 kW radiated, both antennas at the surface',
      x: { label: 'distance, km', from: 10, to: 1000, isLog: true, ticks: [10, 20, 50, 100, 200, 500, 1000] },
      y: { label: 'field, dB above 1 µV/m', from: -100, to: 100 },
      series: frequencies.flatMap((frequencyMhz, i) => one(frequencyMhz, i)),
      caption: [`Worst error against the ${rows.length} vectors of the published code: ${worstText(off, 'dB')}.`],
    });
  },
};

export const SEA_FIGURES: readonly Figure[] = [
  smoothSea('smooth-sea-high.svg', 156.8, 20, 15),
  smoothSea('smooth-sea-low.svg', 162.025, 20, 3),
  others,
  twoRays,
  groundWave,
];
