import type { Authority } from './types.ts';

/** Whose rules the findings are measured against. Almost none of these binds a private pleasure boat. */
export const AUTHORITIES = {
  feeder: {
    name: 'Offshore Special Regulations 2012-13, 3.29.1(b)(ii): at most 40 % lost in the feeder',
    strength: 'race',
  },
  emergencyAntenna: {
    name: 'Offshore Special Regulations 2012-13, 3.29.1(a)(i); UK MGN 280, 16.2: emergency antenna where the mast carries the main one',
    strength: 'race',
  },
  openEnd: {
    name: 'Open-end test of a feeder: loss = 10 log((S + 1)/(S - 1)), handbook relation',
    strength: 'computed',
  },
  vswr: { name: 'AIS makers: 2 at most for steady working; 1.5 is called good', strength: 'maker' },
  impedance: { name: 'Makers of marine VHF and satellite sets: 50 ohm feeder', strength: 'maker' },
  connectorBand: { name: 'Makers of UHF connectors: up to 300 MHz', strength: 'maker' },
  transmitRating: {
    name: 'Makers of splitters: only a unit rated for transmit between a transmitter and its antenna',
    strength: 'maker',
  },
  joint: {
    name: 'Marine and Safety Tasmania, installing your VHF radio: outdoor joints sealed against water',
    strength: 'guide',
  },
  cableRoute: {
    name: 'IMO SN/Circ.227, 2.2.2 as restated by an AIS maker: bends, gap to power cables, sealing',
    strength: 'guide',
  },
  tidyCable: {
    name: 'Common practice, no source: no surplus in a coil, cable held along its way',
    strength: 'practice',
  },
  support: {
    name: 'ISO 10133 and 33 CFR 183.425, read across from DC wiring: supported at least every 450 mm',
    strength: 'practice',
  },
  aisSiting: {
    name: 'IMO SN/Circ.227 as amended by SN/Circ.245, 2.2.1 (for ships; a small craft can seldom keep it)',
    strength: 'guide',
  },
  smallCraftSpacing: { name: 'Marine and Safety Tasmania: 1 m from other antennas on small craft', strength: 'guide' },
  poleShadow: { name: 'IMO resolution A.807(19) as quoted by a maker: 29 times the diameter', strength: 'guide' },
  clearSky: {
    name: 'IMO SN/Circ.227, 2.3 and A.807(19) as restated by makers: clear view of the sky',
    strength: 'guide',
  },
  exposure: {
    name: 'Whole-body limit for the public, 2 W/m2: 47 CFR 1.1310 and EU 1999/519; far-field formula',
    strength: 'guide',
  },
  exposureAverage: {
    name: 'ICNIRP 2020, reference levels for the public (from memory); mean power, far-field formula',
    strength: 'guide',
  },
  strongSignal: {
    name: 'Level to keep any receiver from (no standard, from memory); isolation by mutual impedances',
    strength: 'computed',
  },
  mastShadow: {
    name: 'Scattering series of a round conductor beside the antenna; within 0.6 dB of the method of moments',
    strength: 'computed',
  },
  antennaLength: {
    name: 'Half waves in phase, integrated over the sphere: gain by length, 1 dB allowed on top',
    strength: 'computed',
  },
  gnssGain: { name: 'Makers of GNSS receivers: net gain before the socket', strength: 'maker' },
  satelliteLine: {
    name: 'Margin against the terminal’s own antenna; a low-orbit module’s developer guide: 3 dB of line at most',
    strength: 'computed',
  },
  seaModel: {
    name: 'This program: smooth-sea model of Rec. ITU-R P.526, used from 100 to 3000 MHz',
    strength: 'computed',
  },
  radarBeam: { name: 'Makers of small radars: nobody inside the vertical beam', strength: 'maker' },
  led: { name: 'US Coast Guard Marine Safety Alert 13-18: on/off squelch test', strength: 'guide' },
  position: { name: 'UK MGN 673, 2.1: automatic position into every distress-capable set', strength: 'guide' },
  aisFix: { name: 'Makers of class B AIS: no transmission without an own fix', strength: 'maker' },
  sharedFailure: {
    name: '47 CFR 80.1081 (SOLAS IV/4): two separate and independent means of alert, binding on ships',
    strength: 'guide',
  },
  batteryFlood: { name: 'UK MGN 280, 16.2: radio battery protected against flooding', strength: 'guide' },
  beacon: {
    name: 'MSC/Circ.1040 and national beacon registers: registered to the boat that carries it',
    strength: 'guide',
  },
  overcurrent: { name: '33 CFR 183.455 (US petrol inboard boats): overcurrent device at the source', strength: 'law' },
  voltDrop: { name: 'ISO 10133 and ABYC E-11 as restated: 3 % for electronics', strength: 'guide' },
  hfInsulator: {
    name: 'Single-sideband handbook for yachts: lower insulator 2.1 m up, or the wire sleeved to there',
    strength: 'practice',
  },
  hfLeadIn: { name: 'Makers of HF tuners: tuner where the lead-in leaves the metal hull', strength: 'maker' },
  hfEarth: {
    name: 'Makers of HF tuners and yard practice: earth to hull or plate, not to a through-hull fitting',
    strength: 'practice',
  },
  dcPath: {
    name: 'Riggers’ and owners’ case reports: antenna brackets that close a DC path into the hull',
    strength: 'practice',
  },
  lightning: {
    name: 'A US insurer’s claims 2003-2013: 6.9 per 1000 boat-years for multihulls, 3.8 for monohulls',
    strength: 'practice',
  },
  labels: { name: 'Common practice, no source: one number per cable, the same at both ends', strength: 'practice' },
  records: {
    name: 'MSC.1/Circ.1252, the annual test form: date, instrument and frequency with every reading',
    strength: 'guide',
  },
  foldedWhip: {
    name: 'Common practice, no source: a whip laid down radiates along the boat, not to the horizon',
    strength: 'practice',
  },
  repeater: {
    name: 'Makers of cellular repeaters: inside and outside antennas apart; figure is common practice',
    strength: 'practice',
  },
  completeness: { name: 'This program: needed to compute the installation', strength: 'computed' },
  carriage: {
    name: 'Offshore Special Regulations, section 4 (from memory); UK and US advice to all boats offshore',
    strength: 'guide',
  },
} as const satisfies Record<string, Authority>;
