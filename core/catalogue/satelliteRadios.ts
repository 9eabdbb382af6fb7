import { assumed, gainWindow, NO_TRANSMITTER, type RadioRow, read } from './radioPart.ts';

const LEO_W = read(1.6, 0.3, 'L-band data module developer’s guide Table 13');
const LEO_DBM = read(-117, 1, 'L-band data module developer’s guide Table 13');
/** Terminal with an antenna of its own, beside the socket. */
const LEO_MORE = {
  ownAntennaGainDbi: assumed(1.5, 1.5, 'patch or helix, 0 to 3 dBic; common practice, no source'),
  noiseFigureDb: assumed(3, 1.5),
  dutyPercent: assumed(1, 1, 'bursts of a message; common practice, no source'),
} as const;
const L_BAND_SOCKET = ['rf', ['l-band'], 'tnc'] as const;
const GNSS_SOCKET = ['gnss', ['gnss'], 'tnc'] as const;

/** Sets that work by satellite, over the shore networks or as receivers of broadcasts. */
export const SATELLITE_AND_SHORE_ROWS: readonly RadioRow[] = [
  {
    id: 'radio-l-band-messenger',
    radioClass: 'l-band-messenger',
    text: ['L-band text terminal, own battery', 'Low-orbit text and position reports; can be carried.'],
    sockets: [L_BAND_SOCKET],
    mhz: 1621,
    power: LEO_W,
    sensitivity: LEO_DBM,
    amps: [assumed(0.5, 0.3), assumed(0.1, 0.05)],
    more: LEO_MORE,
    traits: { ownBattery: true, portable: true, internalGnss: true, orbit: 'low' },
  },
  {
    id: 'radio-l-band-voice',
    radioClass: 'l-band-voice',
    text: ['L-band telephone, docked', 'Low-orbit voice; the handset can be carried.'],
    sockets: [L_BAND_SOCKET],
    mhz: 1621,
    power: LEO_W,
    sensitivity: LEO_DBM,
    amps: [assumed(1, 0.4), assumed(0.2, 0.1)],
    more: { ...LEO_MORE, dutyPercent: assumed(12, 5, 'one slot in eight or so of a call; from memory') },
    traits: { ownBattery: true, portable: true, orbit: 'low' },
  },
  {
    id: 'radio-l-band-fixed',
    radioClass: 'l-band-messenger',
    text: [
      'L-band store-and-forward terminal',
      'Text, safety information and distress alert by geostationary satellite.',
    ],
    sockets: [L_BAND_SOCKET],
    mhz: 1635,
    power: assumed(14, 6, 'e.i.r.p. of 12 to 16 dBW less a small antenna’s gain, from memory'),
    sensitivity: assumed(-120, 5, 'from memory'),
    supplyV: 24,
    amps: [
      read(4.1, 0.9, 'class A AIS installation manual app. 9.1, at 24 V'),
      read(1.1, 0.7, 'class A AIS installation manual app. 9.1, at 24 V'),
    ],
    more: { noiseFigureDb: assumed(2.5, 1), dutyPercent: assumed(5, 5) },
    traits: { internalGnss: true, orbit: 'geostationary' },
  },
  {
    id: 'radio-broadband-terminal',
    radioClass: 'broadband-terminal',
    text: ['Broadband satellite terminal', 'Flat or domed terminal with its antenna inside; hungry for power.'],
    sockets: [],
    mhz: 12000,
    power: assumed(4, 2),
    sensitivity: assumed(-95, 10),
    supplyV: 230,
    amps: [assumed(0.4, 0.15), assumed(0.3, 0.1)],
    more: {
      ownAntennaGainDbi: assumed(33, 3, 'flat array of half a metre at 12 GHz, from memory'),
      noiseFigureDb: assumed(1.5, 0.5),
    },
    traits: { integralAntenna: true, orbit: 'low' },
  },
  {
    id: 'radio-gnss-receiver',
    radioClass: 'gnss-receiver',
    text: ['GNSS receiver with external antenna', 'Position onto the data bus.'],
    sockets: [GNSS_SOCKET],
    mhz: 1575.42,
    power: NO_TRANSMITTER,
    sensitivity: assumed(-130, 5, 'signal on the ground, from memory'),
    amps: [assumed(0.1, 0.05), assumed(0.1, 0.05)],
    more: {
      noiseFigureDb: assumed(4, 2),
      ...gainWindow(18, 36, 'OEM receiver user guide, figure 4.7'),
    },
    traits: { internalGnss: true },
  },
  {
    id: 'radio-cellular-repeater',
    radioClass: 'cellular-repeater',
    text: [
      'Cellular repeater',
      'Amplifies between an outside and an inside antenna. Needs the network operator’s consent in many countries.',
    ],
    sockets: [
      ['rf', ['cellular'], 'sma'],
      ['inside', ['cellular'], 'sma'],
    ],
    mhz: 800,
    power: assumed(0.2, 0.1),
    sensitivity: assumed(-100, 5),
    amps: [assumed(1, 0.5), assumed(0.5, 0.2)],
  },
  {
    id: 'radio-cellular-router',
    radioClass: 'cellular-router',
    text: ['Cellular router', 'Mobile data with an outside antenna.'],
    sockets: [['rf', ['cellular'], 'sma']],
    mhz: 800,
    power: assumed(0.2, 0.08, '23 dBm, LTE power class 3, from memory'),
    sensitivity: assumed(-100, 5),
    amps: [assumed(0.8, 0.3), assumed(0.5, 0.2)],
    more: { noiseFigureDb: assumed(7, 2) },
  },
  {
    id: 'radio-wifi-bridge',
    radioClass: 'wifi-bridge',
    text: ['Wi-Fi long-range client', 'Reaches the harbour’s network.'],
    sockets: [['rf', ['wifi'], 'n']],
    mhz: 2440,
    power: assumed(0.1, 0, '100 mW e.i.r.p. allowed in Europe at 2.4 GHz, from memory'),
    sensitivity: assumed(-90, 5),
    amps: [assumed(0.5, 0.2), assumed(0.4, 0.2)],
    more: { noiseFigureDb: assumed(7, 2) },
  },
  {
    id: 'radio-broadcast-receiver',
    radioClass: 'broadcast-receiver',
    text: ['Stereo with FM and DAB', 'Broadcast reception.'],
    sockets: [['rf', ['broadcast'], 'din-41585']],
    mhz: 98,
    power: NO_TRANSMITTER,
    sensitivity: assumed(-105, 5),
    amps: [assumed(2, 1), assumed(2, 1)],
  },
];
