import { type Figure, figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';

// Loss is k1 sqrt(f) + k2 f in dB per 100 m, f in MHz. Fits are least squares of the relative error on published points at
// 10 MHz and above. docs/parts.md lists where sources disagree; tests/published/coaxTables.test.ts holds every type to
// its published points.

const FIT = 'least-squares fit to the published table points named in the coax test';
const OPEN_TABLE = 'open coefficient table made from makers’ data sheets';
const OPEN_THREE_TERM = 'open three-term coefficient table made from makers’ data sheets, DC term dropped';
const MAKER = 'maker’s attenuation equation for the low-loss foil+braid series';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly lossSource: string;
  /** k1, k2, how far published points from 50 MHz up lie off it (per cent), span of those points (MHz). */
  readonly loss: readonly [k1: number, k2: number, tolerancePercent: number, minMhz: number, maxMhz: number];
  /** Impedance (ohm), velocity factor, outside diameter, tightest bend once laid (mm), mass (g/m). */
  readonly body: readonly [ohm: number, velocity: number, diameterMm: number, bendMm: number, gPerM: number];
  /** Which of diameter, bend and mass were read in a source; the others are from memory. */
  readonly read?: 'diameter' | 'all';
}

const ROWS: readonly Row[] = [
  {
    id: 'coax-rg-174-u',
    name: 'RG-174/U',
    use: 'Thin coax for antenna pigtails and captive GNSS leads',
    lossSource: OPEN_TABLE,
    loss: [2.4991, 0.03133, 20, 10, 2400],
    body: [50, 0.66, 2.55, 13, 12],
    read: 'diameter',
  },
  {
    id: 'coax-rg-58c-u',
    name: 'RG-58C/U',
    use: 'Thin stranded coax for short pigtails and captive leads',
    lossSource: FIT,
    loss: [1.3137, 0.02898, 9, 1, 1000],
    body: [50, 0.66, 4.95, 25, 38],
    read: 'diameter',
  },
  {
    id: 'coax-rg-58-u',
    name: 'RG-58/U',
    use: 'Thin coax, solid centre. The name covers cables that differ by half in loss: read the jacket and its data sheet',
    lossSource: OPEN_TABLE,
    loss: [1.1602, 0.01726, 36, 10, 5800],
    body: [52, 0.66, 4.95, 25, 37],
  },
  {
    id: 'coax-rg-8x',
    name: 'RG-8X',
    use: 'Medium foam coax, the usual mast cable of small craft; makers differ',
    lossSource: FIT,
    loss: [0.9697, 0.01666, 12, 1, 450],
    body: [50, 0.82, 6.1, 30, 52],
    read: 'diameter',
  },
  {
    id: 'coax-rg-59b-u',
    name: 'RG-59B/U',
    use: '75 ohm television coax; does not belong in a 50 ohm feeder',
    lossSource: OPEN_TABLE,
    loss: [1.0523, 0.00571, 5, 10, 1000],
    body: [75, 0.66, 6.15, 30, 55],
  },
  {
    id: 'coax-rg-59-u-foam',
    name: 'RG-59/U foam',
    use: '75 ohm television coax, foam; does not belong in a 50 ohm feeder',
    lossSource: OPEN_TABLE,
    loss: [0.9721, 0.00482, 15, 10, 1000],
    body: [75, 0.78, 6.15, 30, 50],
  },
  {
    id: 'coax-rg-6-u',
    name: 'RG-6/U',
    use: '75 ohm television coax of lower loss; does not belong in a 50 ohm feeder',
    lossSource: FIT,
    loss: [0.4716, 0.00701, 8, 10, 1000],
    body: [75, 0.83, 6.9, 35, 60],
    read: 'diameter',
  },
  {
    id: 'coax-rg-8-u',
    name: 'RG-8/U',
    use: 'Thick coax, 52 ohm',
    lossSource: OPEN_TABLE,
    loss: [0.5553, 0.00669, 15, 1, 1000],
    body: [52, 0.66, 10.3, 52, 155],
    read: 'diameter',
  },
  {
    id: 'coax-rg-8-semi-air',
    name: 'RG-8 semi-air',
    use: 'Thick coax with air about its centre: the ends must stay dry',
    lossSource: OPEN_TABLE,
    loss: [0.3953, 0.00216, 12, 1, 1000],
    body: [50, 0.84, 10.3, 76, 130],
    read: 'diameter',
  },
  {
    id: 'coax-rg-213-u',
    name: 'RG-213/U',
    use: 'Thick coax for mast runs and HF',
    lossSource: OPEN_TABLE,
    loss: [0.6231, 0.00709, 9, 1, 1600],
    body: [50, 0.66, 10.29, 52, 155],
    read: 'diameter',
  },
  {
    id: 'coax-rg-214-u',
    name: 'RG-214/U',
    use: 'Thick coax with two screens',
    lossSource: `${OPEN_TABLE}: the RG-213/U pair, same centre conductor and dielectric`,
    loss: [0.6231, 0.00709, 10, 1, 1000],
    body: [50, 0.66, 10.8, 54, 190],
    read: 'diameter',
  },
  {
    id: 'coax-195-class',
    name: '195-class foil+braid',
    use: 'Thin coax of low loss',
    lossSource: FIT,
    loss: [1.1539, 0.002, 3, 1, 5800],
    body: [50, 0.8, 4.95, 13, 31],
  },
  {
    id: 'coax-200-class',
    name: '200-class foil+braid',
    use: 'Thin coax of low loss',
    lossSource: MAKER,
    loss: [1.0528, 0.00108, 3, 1, 5800],
    body: [50, 0.83, 4.95, 13, 33],
  },
  {
    id: 'coax-240-class',
    name: '240-class foil+braid',
    use: 'Coax of low loss as thick as RG-8X',
    lossSource: MAKER,
    loss: [0.7942, 0.00108, 5, 1, 5800],
    body: [50, 0.84, 6.1, 19, 51],
    read: 'diameter',
  },
  {
    id: 'coax-300-class',
    name: '300-class foil+braid',
    use: 'Coax of low loss',
    lossSource: OPEN_THREE_TERM,
    loss: [0.6451, 0.00059, 4, 1, 5800],
    body: [50, 0.85, 7.62, 22, 82],
    read: 'diameter',
  },
  {
    id: 'coax-400-class',
    name: '400-class foil+braid',
    use: 'Thick coax of low loss for mast runs and L-band',
    lossSource: MAKER,
    loss: [0.4012, 0.00085, 7.5, 1, 5800],
    body: [50, 0.85, 10.29, 25.4, 100],
    read: 'all',
  },
  {
    id: 'coax-400-class-flex',
    name: '400-class flexible',
    use: 'As the 400-class with a stranded centre, for runs that move',
    lossSource: OPEN_THREE_TERM,
    loss: [0.483, 0.00103, 5, 1, 450],
    body: [50, 0.85, 10.29, 25.4, 110],
  },
  {
    id: 'coax-500-class',
    name: '500-class foil+braid',
    use: 'Thick coax of low loss',
    lossSource: OPEN_THREE_TERM,
    loss: [0.3095, 0.00109, 3, 1, 5800],
    body: [50, 0.86, 12.7, 32, 144],
  },
  {
    id: 'coax-600-class',
    name: '600-class foil+braid',
    use: 'Very thick coax of low loss',
    lossSource: MAKER,
    loss: [0.2479, 0.00085, 3, 1, 5800],
    body: [50, 0.87, 14.99, 38, 195],
    read: 'diameter',
  },
  {
    id: 'coax-half-inch-foam',
    name: '1/2-inch corrugated foam',
    use: 'Stiff copper line for long fixed runs',
    lossSource: OPEN_TABLE,
    loss: [0.211, 0.00062, 9, 1, 2000],
    body: [50, 0.88, 15.9, 51, 220],
    read: 'diameter',
  },
];

const ELECTRICAL = 'open cable table made from makers’ data sheets';
const READ_BODY = 'handbooks and cable lists';
const MEMORY = 'makers’ data sheets, from memory';

/** Share by which makers of the same type differ in what is from memory: diameter, bend and mass. Common practice. */
const BODY_TOLERANCE = 0.05;

const body = (value: number, isRead: boolean): Figure =>
  figure(value, value * BODY_TOLERANCE, isRead ? 'data-sheet' : 'assumed', isRead ? READ_BODY : MEMORY);

function cable(row: Row): PartOf<'coax'> {
  const [k1, k2, tolerancePercent, minMhz, maxMhz] = row.loss;
  const [ohm, velocity, diameterMm, bendMm, gPerM] = row.body;
  const loss = (value: number): Figure => figure(value, (value * tolerancePercent) / 100, 'data-sheet', row.lossSource);
  const span = 'span in which published points bear the two terms out; below 10 MHz they read low';
  return {
    id: row.id,
    kind: 'coax',
    name: row.name,
    description: `${row.use}.`,
    ports: [],
    figures: {
      lossK1: loss(k1),
      lossK2: loss(k2),
      lossTolerancePercent: figure(
        tolerancePercent,
        0,
        'computed',
        'largest departure of published points from 50 MHz up',
      ),
      minFrequencyMhz: figure(minMhz, 0, 'computed', span),
      maxFrequencyMhz: figure(maxMhz, 0, 'computed', span),
      impedanceOhm: figure(ohm, 2, 'data-sheet', ELECTRICAL),
      velocityFactor: figure(velocity, 0.04, 'data-sheet', ELECTRICAL),
      outsideDiameterMm: body(diameterMm, row.read !== undefined),
      bendOnceMm: body(bendMm, row.read === 'all'),
      massGPerM: body(gPerM, row.read === 'all'),
    },
    traits: {},
  };
}

const lead = (value: number, tolerance: number): Figure =>
  figure(value, tolerance, 'assumed', 'high-voltage ignition-type wire; common practice, no source');
const RADIATES = 'part of the antenna, not a line: no loss of its own is reckoned';

/** The wire from an HF tuner to the antenna. It radiates, so it counts as antenna and loses nothing as a line. */
const HF_LEAD_IN: PartOf<'coax'> = {
  id: 'lead-in-hv-single',
  kind: 'coax',
  name: 'Single-core HV lead-in',
  description: 'High-voltage wire from tuner to HF antenna. It radiates as part of the antenna; touch means burns.',
  ports: [],
  figures: {
    lossK1: figure(0, 0, 'assumed', RADIATES),
    lossK2: figure(0, 0, 'assumed', RADIATES),
    lossTolerancePercent: figure(0, 0, 'assumed', RADIATES),
    minFrequencyMhz: figure(1, 0, 'assumed', RADIATES),
    maxFrequencyMhz: figure(30, 0, 'assumed', RADIATES),
    impedanceOhm: lead(50, 0),
    velocityFactor: lead(0.95, 0.05),
    outsideDiameterMm: lead(7, 2),
    bendOnceMm: lead(35, 10),
    massGPerM: lead(70, 30),
  },
  traits: {},
};

export const COAX: readonly PartOf<'coax'>[] = [...ROWS.map(cable), HF_LEAD_IN];
