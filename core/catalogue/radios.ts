import type { Band, PartOf } from '../model/part.ts';
import { assumed, gainWindow, NO_TRANSMITTER, type RadioRow, radioPart, read, rule } from './radioPart.ts';
import { SATELLITE_AND_SHORE_ROWS } from './satelliteRadios.ts';

const FCC_VHF = rule(25, 5, '47 CFR 80.215(e): 25 W at most; (g): from 8 W');
const VHF_DBM = rule(-107, 3, '47 CFR 80.913(e): 1 uV, 6 dB S/N; bench tests of sets find 9 to 13 dB better');
const VHF_AMPS = [
  read(5.5, 0.8, 'marine electricity handbook: about 5 A; makers, from memory: 5 to 6.5 A'),
  read(0.4, 0.3, 'marine electricity handbook: 0.1 A standby; to 1 A in the class A AIS manual’s list'),
] as const;
const AIS_DBM = rule(-107, 3, 'IEC 62287-2 Table 4: -107 dBm at 20 % packet error');
const AIS_B_AMPS = [assumed(2, 0.5), assumed(0.25, 0.1)] as const;
const HF_W = rule(150, 30, '47 CFR 80.215(d): 150 W PEP at 2 to 4 MHz for ship telephony');
const HF_DBM = rule(-107, 6, '47 CFR 80.913(e): 1 uV at HF, 6 dB S/N');
const HF_AMPS = [assumed(28, 3, 'peak at 13.6 V, from memory'), assumed(2, 1, 'from memory')] as const;

const LOW_1_W = rule(1, 0.3, '47 CFR 80.215(e),(g): reducible to 1 W or less');
/** Voice: a minute of talk in ten. AIS by its reports. */
const VOICE_DUTY = assumed(10, 10, 'a minute of sending in ten; common practice, no source');
const VHF_MORE = { lowTxPowerW: LOW_1_W, dutyPercent: VOICE_DUTY } as const;
const AIS_DUTY = read(1.3, 0.5, 'class A AIS installation manual: 1800 bursts of 26.6 ms an hour');
const AIS_B_DUTY = assumed(0.1, 0.1, 'a burst of 26.6 ms each 30 s; from memory');
const HF_DUTY = assumed(20, 15, 'speech on single sideband; common practice, no source');

/** The least a class B set's maker asks for; no most is printed. */
const AIS_B_MORE = {
  dutyPercent: AIS_B_DUTY,
  gainMinDb: read(25, 3, 'class B AIS manual, appendix A: after cable and connectors'),
} as const;

const VHF: readonly Band[] = ['vhf-marine'];
const VHF_SOCKET = ['rf', VHF, 'uhf'] as const;
const VHF_SOCKET_2 = ['vhf', VHF, 'uhf'] as const;
const GNSS_SOCKET = ['gnss', ['gnss'], 'tnc'] as const;

const MARINE_ROWS: readonly RadioRow[] = [
  {
    id: 'radio-vhf-fixed-25w-dsc',
    radioClass: 'vhf-fixed',
    text: ['VHF fixed, class D DSC, 25 W', 'Voice and selective calling. Licence and operator’s certificate needed.'],
    sockets: [VHF_SOCKET],
    mhz: 156.8,
    power: FCC_VHF,
    sensitivity: VHF_DBM,
    amps: VHF_AMPS,
    more: VHF_MORE,
    traits: { dsc: true },
  },
  {
    id: 'radio-vhf-fixed-25w',
    radioClass: 'vhf-fixed',
    text: ['VHF fixed, voice only, 25 W', 'An older set without selective calling.'],
    sockets: [VHF_SOCKET],
    mhz: 156.8,
    power: FCC_VHF,
    sensitivity: VHF_DBM,
    amps: VHF_AMPS,
    more: VHF_MORE,
  },
  {
    id: 'radio-ais-a',
    radioClass: 'ais-class-a',
    text: ['AIS class A, 12.5 W', 'Ship’s transponder; takes a fix from outside as well as its own.'],
    sockets: [VHF_SOCKET, GNSS_SOCKET],
    mhz: 162,
    power: rule(12.5, 4, 'IEC 61993-2 by way of an open AIS handbook, table F.7'),
    sensitivity: rule(-107, 3, 'IEC 61993-2 by way of an open AIS handbook ch. 27: -107 dBm at 20 % packet error'),
    amps: [
      read(6, 1, 'class A AIS installation manual app. 9.1, at 24 V'),
      read(0.9, 0.15, 'class A AIS installation manual app. 9.1, at 24 V'),
    ],
    supplyV: 24,
    more: {
      lowTxPowerW: rule(1, 0.3, 'IEC 61993-2 by way of an open AIS handbook: 1 W on the low setting'),
      dutyPercent: AIS_DUTY,
      ...gainWindow(0, 10, 'class A AIS installation manual 3.11.2; the IMO rule prints +10 to +20'),
    },
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-b-cs',
    radioClass: 'ais-class-b-cs',
    text: ['AIS class B, carrier-sense, 2 W', 'Small-craft transponder that waits for a free slot.'],
    sockets: [VHF_SOCKET, GNSS_SOCKET],
    mhz: 162,
    power: rule(2, 0.5, 'IEC 62287-1 by way of an open AIS handbook, table F.7'),
    sensitivity: AIS_DBM,
    amps: AIS_B_AMPS,
    more: AIS_B_MORE,
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-b-so',
    radioClass: 'ais-class-b-so',
    text: ['AIS class B, self-organised, 5 W', 'Small-craft transponder with reserved slots.'],
    sockets: [VHF_SOCKET, GNSS_SOCKET],
    mhz: 162,
    power: rule(5, 2, 'IEC 62287-2 Tables 5 and 6: 5 W, 1.5 dB either way'),
    sensitivity: AIS_DBM,
    amps: [assumed(4, 0.5), assumed(0.3, 0.1)],
    more: { ...AIS_B_MORE, lowTxPowerW: rule(1, 0.3, 'IEC 62287-2 Tables 5 and 6: 1 W on the low setting') },
    traits: { internalGnss: true, needsFixToTransmit: true },
  },
  {
    id: 'radio-ais-receiver',
    radioClass: 'ais-receiver',
    text: ['AIS receiver', 'Sees others; is not seen.'],
    sockets: [VHF_SOCKET],
    mhz: 162,
    power: NO_TRANSMITTER,
    sensitivity: read(-107, 5, 'open AIS handbook, table F.2: makers claim -105 to -118 dBm'),
    amps: [read(0.1, 0.03, 'open AIS handbook, table F.2'), read(0.1, 0.03, 'open AIS handbook, table F.2')],
  },
  {
    id: 'radio-mf-hf-150w',
    radioClass: 'mf-hf',
    text: ['MF/HF, 150 W', 'Long-range voice. Needs a tuner at the antenna and an earth.'],
    sockets: [['rf', ['mf-hf'], 'uhf']],
    mhz: 8.291,
    power: HF_W,
    sensitivity: HF_DBM,
    amps: HF_AMPS,
    more: { dutyPercent: HF_DUTY },
  },
  {
    id: 'radio-mf-hf-150w-dsc',
    radioClass: 'mf-hf',
    text: [
      'MF/HF with DSC, 150 W',
      'Long-range voice and selective calling. Needs a tuner at the antenna and an earth.',
    ],
    sockets: [['rf', ['mf-hf'], 'uhf']],
    mhz: 8.291,
    power: HF_W,
    sensitivity: HF_DBM,
    amps: HF_AMPS,
    more: { dutyPercent: HF_DUTY },
    traits: { dsc: true },
  },
  {
    id: 'radio-hf-vhf-25w',
    radioClass: 'mf-hf',
    text: [
      'HF transceiver that also covers marine VHF, 150 W and 25 W',
      'On the marine channels only where its licence and its type approval allow it; then it is one more VHF transmitter.',
    ],
    sockets: [['rf', ['mf-hf'], 'uhf'], VHF_SOCKET_2],
    mhz: 8.291,
    power: HF_W,
    sensitivity: HF_DBM,
    amps: HF_AMPS,
    more: { dutyPercent: HF_DUTY, vhfTxPowerW: FCC_VHF },
  },
  {
    id: 'radio-navtex',
    radioClass: 'navtex-receiver',
    text: ['NAVTEX receiver', 'Safety information as text on 518, 490 and 4209.5 kHz.'],
    sockets: [['rf', ['navtex'], 'bnc']],
    mhz: 0.518,
    power: NO_TRANSMITTER,
    sensitivity: assumed(-107, 6, '2 uV emf for 4 % character error, from memory'),
    amps: [
      read(0.5, 0.3, 'class A AIS installation manual app. 9.1, older set at 24 V'),
      read(0.5, 0.3, 'class A AIS installation manual app. 9.1, older set at 24 V'),
    ],
  },
  {
    id: 'radio-weather-fax',
    radioClass: 'navtex-receiver',
    text: ['HF weather-fax receiver', 'Charts and text by short wave.'],
    sockets: [['rf', ['mf-hf'], 'bnc']],
    mhz: 8.291,
    power: NO_TRANSMITTER,
    sensitivity: HF_DBM,
    amps: [assumed(0.3, 0.2), assumed(0.3, 0.2)],
  },
];

export const RADIOS: readonly PartOf<'radio'>[] = [...MARINE_ROWS, ...SATELLITE_AND_SHORE_ROWS].map(radioPart);
