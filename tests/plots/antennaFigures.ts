import { mastPattern } from '../../core/rf/mastPattern.ts';
import {
  type CollinearAntenna,
  collinearGainDbi,
  elevationSeenDeg,
  heeledGainDbi,
  patternShare,
} from '../../core/rf/pattern.ts';
import { feedImpedance } from '../../core/rf/shortAntenna.ts';
import { collinearIsolationDb, halfWaveIsolation, sideBySideIsolationDb } from '../../core/siting/coupling.ts';
import { cell, type Row } from '../published/table.ts';
import { drawChart, type Mark, type Point, type Series } from './chart.ts';
import { type Figure, line, points, rowsWhere, steps, worstText } from './figures.ts';

const ROWS: readonly (readonly [antenna: CollinearAntenna, label: string, mark: Mark])[] = [
  [{ elements: 1, pitchWavelengths: 0.5 }, 'one half wave', 'circle'],
  [{ elements: 2, pitchWavelengths: 0.75 }, 'two, pitch 0.75', 'square'],
  [{ elements: 4, pitchWavelengths: 0.5 }, 'four, pitch 0.5', 'triangle'],
];
const DEEPEST_SHOWN_DBI = -8;

const pattern: Figure = {
  file: 'whip-pattern.svg',
  draw: () => {
    const gain = (antenna: CollinearAntenna, degrees: number): number =>
      collinearGainDbi(antenna) + 10 * Math.log10(Math.max(1e-9, patternShare(antenna, degrees)));
    const off: (readonly [number, number])[] = [];
    const series = ROWS.flatMap(([antenna, label, mark], colour): Series[] => {
      // Leaning straight towards the partner by an angle shows the pattern at that elevation.
      const solved = rowsWhere('heelGain.csv', { ...antenna, azimuthDeg: 0 });
      const lobes = rowsWhere('collinearGain.csv', { ...antenna }).filter(({ sidelobeDb }) => sidelobeDb !== '');
      const seen: readonly Point[] = [
        ...points(solved, 'heelDeg', 'totalDbi'),
        ...lobes.map((row): Point => [cell(row, 'sidelobeDeg'), cell(row, 'gainDbi') + cell(row, 'sidelobeDb')]),
      ];
      for (const [degrees, dbi] of seen)
        if (gain(antenna, degrees) > collinearGainDbi(antenna) - 10) off.push([gain(antenna, degrees), dbi]);
      return [
        line(label, colour, steps(0, 70, 281), (degrees) => gain(antenna, degrees)),
        { label: 'nec2c', colour, as: mark, points: seen },
      ];
    });
    return drawChart({
      title: 'Whips of half waves in a row: gain over elevation, free space',
      x: { label: 'elevation from straight across, degrees', from: 0, to: 70 },
      y: { label: 'gain, dBi', from: -20, to: 10 },
      series,
      caption: [
        `Worst error against the method of moments (nec2c) down to −10 dB: ${worstText(off, 'dB')}.`,
        'Ideal nulls are drawn; the engine fills them to 20 dB, as real whips do.',
      ],
    });
  },
};

const heel: Figure = {
  file: 'heel.svg',
  draw: () => {
    const headings = [
      [0, 'abeam', 'solid'],
      [90, 'fore and aft', 'dashed'],
    ] as const;
    const off: (readonly [number, number])[] = [];
    const series = ROWS.flatMap(([antenna, label, mark], colour): Series[] =>
      headings.flatMap(([azimuthDeg, where, as]): Series[] => {
        const rows = rowsWhere('heelGain.csv', { ...antenna, azimuthDeg });
        const ideal = (row: Row): number =>
          patternShare(antenna, elevationSeenDeg({ heelDeg: cell(row, 'heelDeg'), azimuthDeg }));
        for (const row of rows)
          if (ideal(row) > 0.1)
            off.push([heeledGainDbi(antenna, { heelDeg: cell(row, 'heelDeg'), azimuthDeg }), cell(row, 'verticalDbi')]);
        return [
          line(
            `${label}, ${where}`,
            colour,
            steps(0, 45, 181),
            (heelDeg) => heeledGainDbi(antenna, { heelDeg, azimuthDeg }),
            as,
          ),
          { label: 'nec2c', colour, as: mark, points: points(rows, 'heelDeg', 'verticalDbi') },
        ];
      }),
    );
    return drawChart({
      title: 'What heel takes: gain towards an upright partner on the horizon',
      x: { label: 'heel, degrees', from: 0, to: 45 },
      y: { label: 'gain, vertical polarisation, dBi', from: DEEPEST_SHOWN_DBI * 2, to: 8 },
      series,
      caption: [
        `Worst error against the method of moments (nec2c) down to −10 dB: ${worstText(off, 'dB')}.`,
        'Abeam the pattern leans away; fore and aft only the polarisation turns. A null is filled to 20 dB.',
      ],
    });
  },
};

const isolation: Figure = {
  file: 'isolation.svg',
  draw: () => {
    const WAVE_M = 299.792458 / 156.8;
    const at = (side: number, up: number): number =>
      halfWaveIsolation({ frequencyMhz: 156.8, sideM: side * WAVE_M, upM: up * WAVE_M }).isolationDb;
    const rows = (kind: string): Row[] => rowsWhere('isolationFreeSpace.csv', { kind, pair: 'P1' });
    const seen = (kind: string, column: string): Point[] =>
      rows(kind).map((row): Point => [cell(row, column) / WAVE_M, cell(row, 'isolationDb')]);
    const [beside, above] = [seen('horizontal', 'sideM'), seen('vertical', 'upM')];
    const off = [
      ...beside.map(([x, db]) => [at(x, 0), db] as const),
      ...above.map(([x, db]) => [at(0, x), db] as const),
    ];
    const [wide, tall] = [steps(0.1, 8, 160, true), steps(0.52, 8, 160, true)];
    return drawChart({
      title: 'Isolation of two vertical half waves in free space',
      x: {
        label: 'distance of the centres, wavelengths',
        from: 0.1,
        to: 8,
        isLog: true,
        ticks: [0.1, 0.2, 0.5, 1, 2, 5],
      },
      y: { label: 'isolation, dB', from: 0, to: 70 },
      series: [
        line('one above the other', 0, tall, (x) => at(0, x)),
        { label: 'nec2c', colour: 0, as: 'circle', points: above },
        line('one-line fit', 0, tall, collinearIsolationDb, 'dashed'),
        line('trade: 28 + 40 log', 5, tall, (x) => 28 + 40 * Math.log10(x), 'dotted'),
        line('side by side', 1, wide, (x) => at(x, 0)),
        { label: 'nec2c', colour: 1, as: 'square', points: beside },
        line('one-line fit', 1, wide, sideBySideIsolationDb, 'dashed'),
        line('trade: 22 + 20 log − gains', 4, wide, (x) => 22 + 20 * Math.log10(x) - 4.3, 'dotted'),
      ],
      caption: [
        `Worst error of the induced-EMF method against the method of moments (nec2c), like antennas: ${worstText(off, 'dB')}.`,
        'The trade’s rules are drawn to show where they part from both.',
      ],
    });
  },
};

const mast: Figure = {
  file: 'mast.svg',
  draw: () => {
    const cases = [
      ['0.1', '0.15', '0.1 m mast, 0.1 m off', 'circle'],
      ['0.1', '0.55', '0.1 m mast, 0.5 m off', 'square'],
      ['0.2', '1.1', '0.2 m mast, 1 m off', 'triangle'],
    ] as const;
    const off: (readonly [number, number])[] = [];
    const series = cases.flatMap(([diameterM, axisToAxisM, label, as], colour): Series[] => {
      const row = rowsWhere('mastPattern.csv', { diameterM, axisToAxisM, offsetM: '0.0' })[0];
      if (!row) throw new Error(`No mast of ${diameterM} m at ${axisToAxisM} m.`);
      const antenna = { elements: 1, pitchWavelengths: 0.5 };
      const { gainsDbi } = mastPattern({
        frequencyMhz: 156.8,
        diameterM: Number(diameterM),
        axisToAxisM: Number(axisToAxisM),
        antenna,
      });
      const ours = gainsDbi.map((dbi, i): Point => [5 * i, dbi]);
      for (const [degrees, dbi] of ours) off.push([dbi, cell(row, `az${degrees}`)]);
      const seen = ours
        .filter(([degrees]) => degrees % 15 === 0)
        .map(([degrees]): Point => [degrees, cell(row, `az${degrees}`)]);
      return [
        { label, colour, as: 'solid', points: ours },
        { label: 'nec2c', colour, as, points: seen },
      ];
    });
    return drawChart({
      title: 'A half wave beside a mast: gain along the horizon, 156.8 MHz',
      x: {
        label: 'azimuth from straight away from the mast (180: over it), degrees',
        from: 0,
        to: 180,
        ticks: [0, 30, 60, 90, 120, 150, 180],
      },
      y: { label: 'gain, dBi', from: -6, to: 8 },
      series: [...series, line('without the mast', 5, [0, 180], () => 2.15, 'dotted')],
      caption: [`Worst error of the cylinder series against the method of moments (nec2c): ${worstText(off, 'dB')}.`],
    });
  },
};

const short: Figure = {
  file: 'short-antenna.svg',
  draw: () => {
    const wires = [
      ['7', '7 m', 0, 'square'],
      ['10', '10 m', 1, 'circle'],
    ] as const;
    const off: (readonly [number, number])[] = [];
    const series = wires.flatMap(([lengthM, label, colour, as]): Series[] => {
      const wire = { lengthM: Number(lengthM), verticalShare: 1, radiusMm: 3 };
      const longestMhz = (0.35 * 299.792458) / wire.lengthM;
      const rows = rowsWhere('hfWireImpedance.csv', { lengthM, elevationDeg: 90, radiusMm: 3 });
      const within = rows.filter((row) => cell(row, 'frequencyMhz') <= longestMhz);
      const ohm = (frequencyMhz: number): number => feedImpedance({ ...wire, frequencyMhz }).radiationOhm;
      for (const row of within) off.push([(100 * ohm(cell(row, 'frequencyMhz'))) / cell(row, 'radiationOhm'), 100]);
      return [
        line(`standing, ${label}`, colour, steps(1.6, longestMhz * 0.999, 120, true), ohm),
        { label: 'nec2c', colour, as, points: points(within, 'frequencyMhz', 'radiationOhm') },
      ];
    });
    return drawChart({
      title: 'Short HF antenna: radiation resistance at the foot, perfect ground',
      x: { label: 'frequency, MHz', from: 1.6, to: 20, isLog: true, ticks: [2, 3, 4, 6, 8, 12, 16, 20] },
      y: {
        label: 'radiation resistance, ohm',
        from: 0.4,
        to: 400,
        isLog: true,
        ticks: [0.5, 1, 2, 5, 10, 20, 50, 100, 200],
      },
      series,
      caption: [
        `Worst error against the method of moments (nec2c) to 0.35 wavelengths: ${worstText(off, 'per cent')}.`,
        'The earth connection, not the wire, decides what is radiated: 5 to 20 ohm lie in series with this.',
      ],
    });
  },
};

export const ANTENNA_FIGURES: readonly Figure[] = [pattern, heel, isolation, mast, short];
