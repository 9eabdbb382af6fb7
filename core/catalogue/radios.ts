import { figure } from '../model/figure.ts';
import type { Band, ConnectorType, PartOf, Port, RadioClass } from '../model/part.ts';

interface Row {
  readonly id: string;
  readonly radioClass: RadioClass;
  readonly name: string;
  readonly description: string;
  /** RF sockets: id, bands, connector. Empty for a set whose antenna is inside. */
  readonly sockets: readonly (readonly [string, readonly Band[], ConnectorType])[];
  readonly frequencyMhz: number;
  readonly powerW: number;
  readonly sensitivityDbm: number;
  readonly supplyV?: number;
  /** Current on transmit and on receive, A. */
  readonly amps: readonly [number, number];
  readonly source: string;
  readonly powerSource?: string;
  readonly traits?: Partial<PartOf<'radio'>['traits']>;
}

const BASE_TRAITS: PartOf<'radio'>['traits'] = {
  dsc: false,
  internalGnss: false,
  needsFixToTransmit: false,
  ownBattery: false,
  portable: false,
  integralAntenna: false,
};
const HANDBOOK_AMPS = 'marine electricity handbook and installation manuals; range from memory';

function radio(row: Row): PartOf<'radio'> {
  const ports: Port[] = row.sockets.map(([id, bands, connector]) => ({
    id,
    medium: 'rf',
    label: id === 'rf' ? 'antenna' : `${id} antenna`,
    connector,
    bands: [...bands],
    impedanceOhm: 50,
  }));
  ports.push({ id: 'dc', medium: 'dc', label: 'supply', role: 'in' }, { id: 'data', medium: 'data', label: 'data' });
  return {
    id: row.id,
    kind: 'radio',
    radioClass: row.radioClass,
    name: row.name,
    description: row.description,
    ports,
    figures: {
      txPowerW: figure(row.powerW, row.powerW * 0.2, 'standard', row.powerSource ?? row.source),
      frequencyMhz: figure(row.frequencyMhz, 0, 'standard', 'working frequency of the service'),
      rxSensitivityDbm: figure(row.sensitivityDbm, 3, 'standard', row.source),
      supplyVoltageV: figure(
        row.supplyV ?? 12.6,
        1,
        'assumed',
        'nominal supply of a 12 V system, charged battery at rest',
      ),
      txCurrentA: figure(row.amps[0], row.amps[0] * 0.15, 'data-sheet', HANDBOOK_AMPS),
      rxCurrentA: figure(row.amps[1], row.amps[1] * 0.3, 'data-sheet', HANDBOOK_AMPS),
    },
    traits: { ...BASE_TRAITS, ...row.traits },
  };
}

const VHF: readonly Band[] = ['vhf-marine'];
const GNSS_SOCKET = ['gnss', ['gnss'], 'tnc'] as const;
const VHF_SENSITIVITY =
  '1 uV in 50 ohm = -107 dBm, reference sensitivity of the service (47 CFR 80.913; ETSI from memory)';
const AIS_SENSITIVITY = 'IEC 62287-2 Table 4: -107 dBm at 20 % packet error';
const MEMORY = 'from memory';

const ROWS: readonly Row[] = [
  {
    id: 'radio-vhf-fixed-25w-dsc',
    radioClass: 'vhf-fixed',
    name: 'VHF fixed, class D DSC, 25 W',
    description: 'Marine voice and digital selective calling. Licence and operator’s certificate needed.',
    sockets: [['rf', VHF, 'uhf']],
    frequencyMhz: 156.8,
    powerW: 25,
    sensitivityDbm: -107,
    amps: [5.5, 0.4],
    source: VHF_SENSITIVITY,
    powerSource: '47 CFR 80.215(e): 25 W at most',
    traits: { dsc: true },
  },
  {
    id: 'radio-vhf-fixed-25w',
    radioClass: 'vhf-fixed',
    name: 'VHF fixed, voice only, 25 W',
    description: 'An older set without selective calling.',
    sockets: [['rf', VHF, 'uhf']],
    frequencyMhz: 156.8,
    powerW: 25,
    sensitivityDbm: -107,
    amps: [5.5, 0.3],
    source: VHF_SENSITIVITY,
    powerSource: '47 CFR 80.215(e): 25 W at most',
  },
  {
    id: 'radio-ais-a',
    radioClass: 'ais-class-a',
    name: 'AIS class A, 12.5 W',
    description: 'Ship’s transponder.',
    sockets: [['rf', VHF, 'uhf'], GNSS_SOCKET],
    frequencyMhz: 162,
    powerW: 12.5,
    sensitivityDbm: -107,
    amps: [6, 0.9],
    source: AIS_SENSITIVITY,
    powerSource: 'open AIS handbook app. F',
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-b-cs',
    radioClass: 'ais-class-b-cs',
    name: 'AIS class B, carrier-sense, 2 W',
    description: 'Small-craft transponder, waits for a free slot.',
    sockets: [['rf', VHF, 'uhf'], GNSS_SOCKET],
    frequencyMhz: 162,
    powerW: 2,
    sensitivityDbm: -107,
    amps: [2, 0.25],
    source: AIS_SENSITIVITY,
    powerSource: 'open AIS handbook app. F',
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-b-so',
    radioClass: 'ais-class-b-so',
    name: 'AIS class B, self-organised, 5 W',
    description: 'Small-craft transponder with reserved slots.',
    sockets: [['rf', VHF, 'uhf'], GNSS_SOCKET],
    frequencyMhz: 162,
    powerW: 5,
    sensitivityDbm: -107,
    amps: [4, 0.3],
    source: AIS_SENSITIVITY,
    powerSource: 'IEC 62287-2 Table 5',
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-receiver',
    radioClass: 'ais-receiver',
    name: 'AIS receiver',
    description: 'Sees others; is not seen.',
    sockets: [['rf', VHF, 'uhf']],
    frequencyMhz: 162,
    powerW: 0,
    sensitivityDbm: -107,
    amps: [0.1, 0.1],
    source: AIS_SENSITIVITY,
  },
  {
    id: 'radio-mf-hf-150w',
    radioClass: 'mf-hf',
    name: 'MF/HF, 150 W',
    description: 'Long-range voice. Needs a tuner at the antenna and an earth.',
    sockets: [['rf', ['mf-hf'], 'uhf']],
    frequencyMhz: 8.291,
    powerW: 150,
    sensitivityDbm: -117,
    amps: [28, 2],
    source: MEMORY,
    powerSource: '47 CFR 80.215(d)',
  },
  {
    id: 'radio-mf-hf-150w-dsc',
    radioClass: 'mf-hf',
    name: 'MF/HF with DSC, 150 W',
    description: 'Long-range voice and selective calling. Needs a tuner at the antenna and an earth.',
    sockets: [['rf', ['mf-hf'], 'uhf']],
    frequencyMhz: 8.291,
    powerW: 150,
    sensitivityDbm: -117,
    amps: [28, 2],
    source: MEMORY,
    powerSource: '47 CFR 80.215(d)',
    traits: { dsc: true },
  },
  {
    id: 'radio-navtex',
    radioClass: 'navtex-receiver',
    name: 'NAVTEX receiver',
    description: 'Safety information as text on 518, 490 and 4209.5 kHz.',
    sockets: [['rf', ['navtex'], 'bnc']],
    frequencyMhz: 0.518,
    powerW: 0,
    sensitivityDbm: -110,
    amps: [0.3, 0.3],
    source: MEMORY,
  },
  {
    id: 'radio-weather-fax',
    radioClass: 'navtex-receiver',
    name: 'HF weather-fax receiver',
    description: 'Charts and text by short wave.',
    sockets: [['rf', ['mf-hf'], 'bnc']],
    frequencyMhz: 8.291,
    powerW: 0,
    sensitivityDbm: -110,
    amps: [0.3, 0.3],
    source: MEMORY,
  },
  {
    id: 'radio-l-band-messenger',
    radioClass: 'l-band-messenger',
    name: 'L-band text terminal, own battery',
    description: 'Low-orbit text and position reports; can be carried.',
    sockets: [['rf', ['l-band'], 'tnc']],
    frequencyMhz: 1621,
    powerW: 1.6,
    sensitivityDbm: -117,
    amps: [0.5, 0.1],
    source: 'L-band data module developer’s guide Table 13',
    traits: { ownBattery: true, portable: true, internalGnss: true },
  },
  {
    id: 'radio-l-band-voice',
    radioClass: 'l-band-voice',
    name: 'L-band telephone, docked',
    description: 'Low-orbit voice; the handset can be carried.',
    sockets: [['rf', ['l-band'], 'tnc']],
    frequencyMhz: 1621,
    powerW: 1.6,
    sensitivityDbm: -117,
    amps: [1, 0.2],
    source: 'L-band data module developer’s guide Table 13',
    traits: { ownBattery: true, portable: true },
  },
  {
    id: 'radio-l-band-fixed',
    radioClass: 'l-band-messenger',
    name: 'L-band store-and-forward terminal, fixed',
    description: 'Text, safety information and distress alert by geostationary satellite.',
    sockets: [['rf', ['l-band'], 'tnc']],
    frequencyMhz: 1635,
    powerW: 14,
    sensitivityDbm: -120,
    amps: [5, 0.6],
    source: 'AIS installation manual app. 9.1; sensitivity from memory',
    traits: { internalGnss: true },
  },
  {
    id: 'radio-broadband-terminal',
    radioClass: 'broadband-terminal',
    name: 'Broadband satellite terminal',
    description: 'Flat or domed terminal with its antenna inside; hungry for power.',
    sockets: [],
    frequencyMhz: 12000,
    powerW: 4,
    sensitivityDbm: -95,
    supplyV: 230,
    amps: [0.4, 0.3],
    source: MEMORY,
    traits: { integralAntenna: true },
  },
  {
    id: 'radio-gnss-receiver',
    radioClass: 'gnss-receiver',
    name: 'GNSS receiver with external antenna',
    description: 'Position onto the data bus.',
    sockets: [['gnss', ['gnss'], 'tnc']],
    frequencyMhz: 1575.42,
    powerW: 0,
    sensitivityDbm: -130,
    amps: [0.1, 0.1],
    source: MEMORY,
    traits: { internalGnss: true },
  },
  {
    id: 'radio-cellular-repeater',
    radioClass: 'cellular-repeater',
    name: 'Cellular repeater',
    description:
      'Amplifies between an outside and an inside antenna. Needs the network operator’s consent in many countries.',
    sockets: [
      ['rf', ['cellular'], 'sma'],
      ['inside', ['cellular'], 'sma'],
    ],
    frequencyMhz: 800,
    powerW: 0.2,
    sensitivityDbm: -100,
    amps: [1, 0.5],
    source: MEMORY,
  },
  {
    id: 'radio-cellular-router',
    radioClass: 'cellular-router',
    name: 'Cellular router',
    description: 'Mobile data with an outside antenna.',
    sockets: [['rf', ['cellular'], 'sma']],
    frequencyMhz: 800,
    powerW: 0.2,
    sensitivityDbm: -100,
    amps: [0.8, 0.5],
    source: MEMORY,
  },
  {
    id: 'radio-wifi-bridge',
    radioClass: 'wifi-bridge',
    name: 'Wi-Fi long-range client',
    description: 'Reaches the harbour’s network.',
    sockets: [['rf', ['wifi'], 'n']],
    frequencyMhz: 2440,
    powerW: 0.1,
    sensitivityDbm: -90,
    amps: [0.5, 0.4],
    source: MEMORY,
  },
  {
    id: 'radio-broadcast-receiver',
    radioClass: 'broadcast-receiver',
    name: 'Stereo with FM and DAB',
    description: 'Broadcast reception.',
    sockets: [['rf', ['broadcast'], 'din-41585']],
    frequencyMhz: 98,
    powerW: 0,
    sensitivityDbm: -105,
    amps: [2, 2],
    source: MEMORY,
  },
];

export const RADIOS: readonly PartOf<'radio'>[] = ROWS.map(radio);
