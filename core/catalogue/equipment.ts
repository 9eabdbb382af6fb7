import { type Figure, figure } from '../model/figure.ts';
import type { EquipmentClass, PartOf, Port } from '../model/part.ts';

const PRACTICE = 'common practice, no source';
const SUPPLY: Port = { id: 'dc', medium: 'dc', label: 'supply', role: 'in' };
const data = (id: string): Port => ({ id, medium: 'data', label: id === 'data' ? 'data' : `drop ${id}` });
const assumed = (value: number, tolerance: number): Figure => figure(value, tolerance, 'assumed', PRACTICE);

function equipment(
  id: string,
  equipmentClass: EquipmentClass,
  name: string,
  description: string,
  ports: readonly Port[],
  figures: Readonly<Record<string, Figure>> = {},
): PartOf<'equipment'> {
  return {
    id,
    kind: 'equipment',
    equipmentClass,
    name,
    description,
    ports: [...ports],
    figures: { ...figures },
    traits: { needsSupply: ports.some((port) => port.medium === 'dc') },
  };
}

const RADAR_BEAM = figure(25, 2, 'assumed', 'usual vertical beamwidth of small-craft radar, from memory');

export const EQUIPMENT: readonly PartOf<'equipment'>[] = [
  equipment(
    'radar-dome-4kw',
    'radar',
    'Radar dome, 4 kW',
    'Keep people out of the beam; off before anyone goes aloft.',
    [SUPPLY, data('data')],
    { peakPowerKw: assumed(4, 0.5), verticalBeamDeg: RADAR_BEAM, currentA: assumed(3, 1) },
  ),
  equipment(
    'radar-open-array-4kw',
    'radar',
    'Radar open array, 4 kW',
    'Turning array: keep people out of its beam and its sweep.',
    [SUPPLY, data('data')],
    { peakPowerKw: assumed(4, 0.5), verticalBeamDeg: RADAR_BEAM, currentA: assumed(4, 1) },
  ),
  equipment('display-repeater', 'display', 'Display', 'Shows what is on the bus.', [SUPPLY, data('data')], {
    currentA: assumed(1, 0.5),
  }),
  equipment(
    'data-bus-nmea-2000',
    'data-bus',
    'Data bus backbone',
    'Trunk with drops; one break or short can silence all of it.',
    [SUPPLY, ...'abcdefgh'.split('').map(data)],
    { currentA: assumed(0.2, 0.1) },
  ),
  equipment(
    'router-network',
    'router',
    'Network router',
    'Between a terminal and its users.',
    [SUPPLY, ...'abcd'.split('').map(data)],
    { currentA: assumed(0.8, 0.3) },
  ),
  equipment(
    'lamp-led-tricolour',
    'lamp',
    'LED masthead lamp',
    'Its driver may make noise on VHF: try squelch with it on and off.',
    [SUPPLY],
    { currentA: assumed(0.3, 0.1) },
  ),
  equipment(
    'compass-magnetic',
    'compass',
    'Magnetic compass',
    'Keep loudspeakers and sets at their stated distance.',
    [],
  ),
  equipment(
    'autopilot-computer',
    'autopilot',
    'Autopilot computer',
    'HF on a near wire can upset it.',
    [SUPPLY, data('data')],
    { currentA: assumed(4, 2) },
  ),
  equipment(
    'wind-generator',
    'wind-generator',
    'Wind generator on a pole',
    'Its pole shadows what stands near it; its regulator may make noise.',
    [],
  ),
  equipment('earth-plate', 'earth-plate', 'Earth plate', 'Under-water plate for HF or lightning.', []),
  equipment('dead-cable', 'dead-cable', 'Dead cable', 'Left from an old set. Remove it, or label and cap it.', []),
];
