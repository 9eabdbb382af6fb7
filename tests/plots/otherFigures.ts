import { COAX } from '../../core/catalogue/coax.ts';
import { foEMhz } from '../../core/propagation/eLayer.ts';
import { eLayerMufMhz, f2BasicMuf, hopGeometry, longestHopKm } from '../../core/propagation/skyWave.ts';
import { attenuationDbPer100m } from '../../core/rf/coax.ts';
import { galacticNoise, manMadeNoise, type NoiseEnvironment } from '../../core/rf/noise.ts';
import { cell, type Row, readTable } from '../published/table.ts';
import { drawChart, type Mark, type Point, type Series } from './chart.ts';
import { type Figure, line, points, rowsWhere, steps, worstText } from './figures.ts';

const noise: Figure = {
  file: 'noise.svg',
  draw: () => {
    const rows = readTable('externalNoise.csv');
    const laws: readonly (readonly [NoiseEnvironment | 'galactic', string, number, Mark])[] = [
      ['city', 'cityDb', 200, 'circle'],
      ['residential', 'residentialDb', 200, 'square'],
      ['rural', 'ruralDb', 200, 'triangle'],
      ['quiet-rural', 'quietRuralDb', 30, 'cross'],
      ['galactic', 'galacticDb', 100, 'circle'],
    ];
    const off: (readonly [number, number])[] = [];
    const series = laws.flatMap(([law, column, endMhz, as], colour): Series[] => {
      const db = (mhz: number): number => (law === 'galactic' ? galacticNoise(mhz) : manMadeNoise(law, mhz)).medianDb;
      const own = points(rows, 'frequencyMhz', column);
      for (const [mhz, known] of own) off.push([db(mhz), known]);
      return [
        line(law.replace('-', ' '), colour, steps(1.5, endMhz, 60, true), db),
        { label: 'P.372 vectors', colour, as, points: own },
      ];
    });
    return drawChart({
      title: 'Noise from outside: medians by category',
      x: { label: 'frequency, MHz', from: 1.5, to: 200, isLog: true, ticks: [2, 5, 10, 20, 50, 100, 200] },
      y: { label: 'noise figure Fa, dB above kT0B', from: 0, to: 80 },
      series,
      caption: [
        `Worst error against the ${off.length} vectors: ${worstText(off, 'dB')}.`,
        'Lightning is not in it: it is a category the user states. The galaxy is heard above the critical frequency foF2 only.',
      ],
    });
  },
};

const muf: Figure = {
  file: 'f2-muf.svg',
  draw: () => {
    const off: (readonly [number, number])[] = [];
    const series = ['4', '6', '8', '11'].flatMap((foF2, colour): Series[] => {
      const rows = rowsWhere('f2Muf.csv', { foF2Mhz: foF2 });
      const first = rows[0];
      if (!first) throw new Error(`No rows for foF2 ${foF2}.`);
      const sky = {
        foF2Mhz: Number(foF2),
        foEMhz: cell(first, 'foEMhz'),
        m3000: cell(first, 'm3000'),
        gyrofrequencyMhz: cell(first, 'gyrofrequencyMhz'),
      };
      for (const row of rows) off.push([f2BasicMuf(sky, cell(row, 'hopKm')).mufMhz, cell(row, 'mufMhz')]);
      const longest = f2BasicMuf(sky, 1000).longestHopKm;
      return [
        line(
          `foF2 ${foF2}, foE ${sky.foEMhz} MHz`,
          colour,
          steps(20, longest, 160),
          (hopKm) => f2BasicMuf(sky, hopKm).mufMhz,
        ),
        { label: 'P.533 vectors', colour, as: 'circle', points: points(rows, 'hopKm', 'mufMhz') },
      ];
    });
    const eAt = steps(20, longestHopKm(110) * 0.999, 100);
    return drawChart({
      title: 'Highest frequency one hop by the F2 layer carries',
      x: { label: 'length of the hop, km', from: 0, to: 4000 },
      y: { label: 'basic MUF, MHz', from: 0, to: 40 },
      series: [...series, line('by the E layer, foE 3.3', 5, eAt, (hopKm) => eLayerMufMhz(3.3, hopKm) ?? 0, 'dashed')],
      caption: [
        `Worst error against the ${off.length} vectors: ${worstText(off, 'MHz')}. Work at 0.85 of the monthly median.`,
        'No prediction: the ionosphere is what the user states.',
      ],
    });
  },
};

const hop: Figure = {
  file: 'hop.svg',
  draw: () => {
    const off: (readonly [number, number])[] = [];
    const heights = [...new Set(readTable('hopGeometry.csv').map(({ virtualHeightKm }) => virtualHeightKm ?? ''))];
    const series = heights.flatMap((heightKm, colour): Series[] => {
      const rows = rowsWhere('hopGeometry.csv', { virtualHeightKm: heightKm });
      const takeoff = (hopKm: number): number => hopGeometry(hopKm, Number(heightKm)).takeoffDeg;
      for (const row of rows) off.push([takeoff(cell(row, 'hopKm')), cell(row, 'takeoffDeg')]);
      return [
        line(`mirror at ${heightKm} km`, colour, steps(40, longestHopKm(Number(heightKm)) * 0.9999, 160), takeoff),
        { label: 'P.533 vectors', colour, as: 'circle', points: points(rows, 'hopKm', 'takeoffDeg') },
      ];
    });
    return drawChart({
      title: 'Take-off angle of one hop',
      x: { label: 'length of the hop, km', from: 0, to: 4000 },
      y: { label: 'take-off, degrees', from: 0, to: 90, ticks: [0, 15, 30, 45, 60, 75, 90] },
      series,
      caption: [`Worst error against the ${off.length} vectors: ${worstText(off, 'degrees')}.`],
    });
  },
};

const eLayer: Figure = {
  file: 'e-layer.svg',
  draw: () => {
    const rows = readTable('sunAndELayer.csv');
    const day = rows.filter((row) => cell(row, 'zenithDeg') < 90);
    const at = (row: Row): number =>
      foEMhz({
        latitudeDeg: cell(row, 'latitudeDeg'),
        declinationDeg: cell(row, 'declinationDeg'),
        zenithDeg: cell(row, 'zenithDeg'),
        sunspotNumber: cell(row, 'sunspotNumber'),
        hoursAfterSunset: null,
      });
    const off = day.map((row) => [at(row), cell(row, 'foEMhz')] as const);
    const quiet = (row: Row): boolean => cell(row, 'sunspotNumber') < 50;
    const both = (those: readonly Row[]): Point[] => those.map((row): Point => [cell(row, 'foEMhz'), at(row)]);
    return drawChart({
      title: 'Critical frequency of the E layer by day, at sea points of all latitudes and months',
      x: { label: 'published routines of P.533, MHz', from: 0, to: 5 },
      y: { label: 'engine, MHz', from: 0, to: 5 },
      series: [
        line('the same', 5, [0, 5], (x) => x, 'dotted'),
        { label: 'few sunspots', colour: 0, as: 'circle', points: both(day.filter(quiet)) },
        { label: 'many sunspots', colour: 1, as: 'cross', points: both(day.filter((row) => !quiet(row))) },
      ],
      caption: [`Worst error over the ${day.length} points by day: ${worstText(off, 'MHz')}.`],
    });
  },
};

const coax: Figure = {
  file: 'coax.svg',
  draw: () => {
    const types: readonly (readonly [string, Mark])[] = [
      ['coax-rg-174-u', 'cross'],
      ['coax-rg-58c-u', 'circle'],
      ['coax-rg-213-u', 'square'],
      ['coax-400-class', 'triangle'],
      ['coax-half-inch-foam', 'circle'],
    ];
    const notes: string[] = [];
    const series = types.flatMap(([id, as], colour): Series[] => {
      const part = COAX.find((candidate) => candidate.id === id);
      if (!part) throw new Error(`No coax ${id}.`);
      const { minFrequencyMhz, maxFrequencyMhz } = part.figures;
      const own = points(rowsWhere('coaxPoints.csv', { partId: id }), 'frequencyMhz', 'dbPer100m').filter(
        ([mhz]) => mhz >= 10,
      );
      const percents = own
        .filter(([mhz]) => mhz >= 50 && mhz <= maxFrequencyMhz.value)
        .map(([mhz, db]) => Math.abs(100 * (attenuationDbPer100m(part, mhz) / db - 1)));
      const name = part.name.split(/[ ,(]/)[0] ?? part.name;
      notes.push(`${name} ${Math.max(...percents).toFixed(0)} %`);
      const at = steps(Math.max(10, minFrequencyMhz.value), maxFrequencyMhz.value, 60, true);
      return [
        line(name, colour, at, (mhz) => attenuationDbPer100m(part, mhz)),
        { label: 'published points', colour, as, points: own },
      ];
    });
    return drawChart({
      title: 'Attenuation of five coax types at 20 °C',
      x: {
        label: 'frequency, MHz',
        from: 10,
        to: 6000,
        isLog: true,
        ticks: [10, 20, 50, 100, 200, 500, 1000, 2000, 5000],
      },
      y: { label: 'dB per 100 m', from: 0.5, to: 300, isLog: true, ticks: [0.5, 1, 2, 5, 10, 20, 50, 100, 200] },
      series,
      caption: [
        `Worst departure from 50 MHz up: ${notes.join(', ')}.`,
        'Where it is large the sources differ among themselves, up to a point of RG-58C/U at 450 MHz that is not followed.',
      ],
    });
  },
};

export const OTHER_FIGURES: readonly Figure[] = [noise, muf, hop, eLayer, coax];
