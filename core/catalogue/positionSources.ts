import { figure } from '../model/figure.ts';
import type { PartOf, Port } from '../model/part.ts';

const PRACTICE = 'common practice, no source';

function source(
  id: string,
  name: string,
  description: string,
  amps: number,
  traits: PartOf<'position-source'>['traits'],
  sockets: readonly Port[] = [],
  more: Partial<PartOf<'position-source'>['figures']> = {},
): PartOf<'position-source'> {
  return {
    id,
    kind: 'position-source',
    name,
    description,
    ports: [
      ...sockets,
      { id: 'dc', medium: 'dc', label: 'supply', role: 'in' },
      { id: 'data', medium: 'data', label: 'data' },
    ],
    figures: {
      supplyVoltageV: figure(12.6, 1, 'assumed', 'nominal supply of a 12 V system, charged battery at rest'),
      currentA: figure(amps, amps * 0.3, 'assumed', PRACTICE),
      ...more,
    },
    traits,
  };
}

export const POSITION_SOURCES: readonly PartOf<'position-source'>[] = [
  source(
    'gnss-smart-antenna',
    'GNSS receiver in its own antenna',
    'Puck on the rail or roof that sends position onto the bus.',
    0.1,
    { integralAntenna: true, display: false },
  ),
  source(
    'gnss-receiver-external',
    'GNSS receiver with an outside antenna',
    'Receiver below, antenna by coax.',
    0.2,
    { integralAntenna: false, display: false },
    [{ id: 'gnss', medium: 'rf', label: 'GNSS antenna', connector: 'tnc', bands: ['gnss'], impedanceOhm: 50 }],
    {
      noiseFigureDb: figure(4, 2, 'assumed', PRACTICE),
      gainMinDb: figure(18, 3, 'data-sheet', 'OEM GNSS receiver user guide, figure 4.7'),
      gainMaxDb: figure(36, 3, 'data-sheet', 'OEM GNSS receiver user guide, figure 4.7'),
    },
  ),
  source(
    'plotter-own-gnss',
    'Plotter with its own GNSS',
    'Chart display; its receiver sees the sky from where it stands.',
    2,
    { integralAntenna: true, display: true },
  ),
];
