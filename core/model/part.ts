import { z } from 'zod';
import { figureSchema } from './figure.ts';

/** Frequency bands a port or antenna is made for; two RF ports fit only if they share one. */
export const bandSchema = z.enum([
  'mf-hf',
  'navtex',
  'broadcast',
  'vhf-marine',
  'beacon-406',
  'cellular',
  'gnss',
  'l-band',
  'wifi',
  'radar',
  'satellite-broadband',
]);
export type Band = z.infer<typeof bandSchema>;

export const connectorTypeSchema = z.enum([
  'uhf',
  'n',
  'bnc',
  'tnc',
  'sma',
  'fme',
  'f',
  'din-41585',
  'terminal',
  'captive',
]);
export type ConnectorType = z.infer<typeof connectorTypeSchema>;

/** A place on a part where something is joined to it. A feed joins two `dc` ports, a run two `rf` ports, a link two `data` ports. */
export const portSchema = z.discriminatedUnion('medium', [
  z.strictObject({
    id: z.string(),
    medium: z.literal('rf'),
    label: z.string(),
    connector: connectorTypeSchema,
    bands: z.array(bandSchema).min(1),
    impedanceOhm: z.number().positive().default(50),
  }),
  z.strictObject({ id: z.string(), medium: z.literal('dc'), label: z.string(), role: z.enum(['in', 'out']) }),
  z.strictObject({ id: z.string(), medium: z.literal('data'), label: z.string() }),
]);
export type Port = z.infer<typeof portSchema>;
export type RfPort = Extract<Port, { medium: 'rf' }>;

/** A loss read from a table by frequency, dB >= 0, interpolated between rows. */
export const lossRowSchema = z.strictObject({
  frequencyMhz: z.number().positive(),
  lossDb: z.number().nonnegative(),
});
export const lossTableSchema = z.strictObject({
  rows: z.array(lossRowSchema).min(1),
  toleranceDb: z.number().nonnegative(),
  basis: figureSchema.shape.basis,
  source: z.string(),
});
export type LossTable = z.infer<typeof lossTableSchema>;

const common = {
  id: z.string(),
  name: z.string(),
  description: z.string(),
  ports: z.array(portSchema).default([]),
};
const f = figureSchema;
const optionalFigure = figureSchema.optional();

export const radioClassSchema = z.enum([
  'vhf-fixed',
  'ais-class-a',
  'ais-class-b-cs',
  'ais-class-b-so',
  'ais-receiver',
  'mf-hf',
  'navtex-receiver',
  'l-band-messenger',
  'l-band-voice',
  'broadband-terminal',
  'gnss-receiver',
  'cellular-repeater',
  'cellular-router',
  'wifi-bridge',
  'broadcast-receiver',
]);
export type RadioClass = z.infer<typeof radioClassSchema>;

/** How high the satellites of a system fly: some 800 km, some 20 000 km, or over the equator with the earth. */
export const orbitSchema = z.enum(['low', 'medium', 'geostationary']);
export type Orbit = z.infer<typeof orbitSchema>;

/** A set with antenna sockets. `txPowerW` is 0 for a receiver. */
export const radioPartSchema = z.strictObject({
  ...common,
  kind: z.literal('radio'),
  radioClass: radioClassSchema,
  figures: z.strictObject({
    txPowerW: f,
    frequencyMhz: f,
    rxSensitivityDbm: f,
    supplyVoltageV: f,
    txCurrentA: f,
    rxCurrentA: f,
    /** Power on the marine VHF channels of a set whose main service is another, W; absent where it has none there. */
    vhfTxPowerW: optionalFigure,
    /** Power of its low setting, W; absent where it has one setting only. */
    lowTxPowerW: optionalFigure,
    /** Share of the time it sends in use, per cent: what heating and exposure are averaged over. */
    dutyPercent: optionalFigure,
    /** Of the receiver; absent where only the sensitivity is stated. */
    noiseFigureDb: optionalFigure,
    /** Gain of the antenna built into it, dBi; absent where it has none. */
    ownAntennaGainDbi: optionalFigure,
    /** Net gain the GNSS receiver wants before its socket, dB: least and most. */
    gainMinDb: optionalFigure,
    gainMaxDb: optionalFigure,
  }),
  traits: z.strictObject({
    /** Digital selective calling: can send a distress alert. */
    dsc: z.boolean(),
    /** Has its own GNSS receiver (whether that sees the sky is decided by its antenna or place). */
    internalGnss: z.boolean(),
    /** Does not transmit at all without a fix (AIS). */
    needsFixToTransmit: z.boolean(),
    /** Runs for a while on a battery inside it. */
    ownBattery: z.boolean(),
    /** Can be taken off its mount and used in the hand or in the raft. */
    portable: z.boolean(),
    /** Its antenna is inside: needs no run, only a clear sky at its place. */
    integralAntenna: z.boolean(),
    /** Which satellites it works by; absent for what uses none. Where it is not said, the class decides. */
    orbit: orbitSchema.optional(),
  }),
});

export const antennaClassSchema = z.enum([
  'vhf-whip',
  'vhf-collinear',
  'vhf-emergency',
  'hf-whip',
  'hf-wire',
  'gnss',
  'l-band',
  'cellular',
  'wifi',
  'broadcast',
  'navtex',
  'dome',
]);
export type AntennaClass = z.infer<typeof antennaClassSchema>;

export const antennaPartSchema = z.strictObject({
  ...common,
  kind: z.literal('antenna'),
  antennaClass: antennaClassSchema,
  figures: z.strictObject({
    gainDbi: f,
    lengthM: f,
    /** Height of the effective feed point above the base, m. */
    feedHeightM: f,
    /** Half-power beamwidth in the vertical plane, degrees. */
    hpbwDeg: f,
    vswr: f,
    /** Gain of an amplifier in the antenna, dB; absent for a passive one. */
    amplifierGainDb: optionalFigure,
    amplifierNoiseFigureDb: optionalFigure,
    /** Half-wave elements above each other, a whole number, and the distance of their centres in wavelengths. */
    elements: optionalFigure,
    pitchWavelengths: optionalFigure,
    /** Loss resistance of earth, joints and hull under an HF antenna, ohm. */
    groundLossOhm: optionalFigure,
    /** Radius of the conductor of an HF antenna, mm. */
    conductorRadiusMm: optionalFigure,
  }),
  traits: z.strictObject({
    polarisation: z.enum(['vertical', 'horizontal', 'circular']),
    /** What the trade prints on the box, e.g. `3 dB`. Never used as a gain. */
    tradeLabel: z.string(),
  }),
});

export const deviceClassSchema = z.enum([
  'splitter-active',
  'splitter-passive',
  'diplexer',
  'switch',
  'arrestor',
  'tuner',
  'amplifier',
  'joint',
  'adapter',
  'filter',
]);
export type DeviceClass = z.infer<typeof deviceClassSchema>;

/** One way through a device, in either direction between two of its RF ports. */
export const throughSchema = z.strictObject({
  fromPortId: z.string(),
  toPortId: z.string(),
  /** Key into the part's `figures` or, if not there, its `lossTables`. */
  lossKey: z.string(),
  /** Keys of the figures with gain and noise figure, dB, of an amplifier in this way; it acts on reception only. */
  gainKey: z.string().optional(),
  noiseFigureKey: z.string().optional(),
  transmit: z.boolean(),
  receive: z.boolean(),
  /** What this way does when the device has no supply or has failed. `through` for a plain passive part. */
  whenUnpowered: z.enum(['through', 'open', 'unknown']),
});
export type Through = z.infer<typeof throughSchema>;

export const inlinePartSchema = z.strictObject({
  ...common,
  kind: z.literal('inline'),
  deviceClass: deviceClassSchema,
  throughs: z.array(throughSchema).min(1),
  figures: z.record(z.string(), f),
  lossTables: z.record(z.string(), lossTableSchema).default({}),
  traits: z.strictObject({
    needsSupply: z.boolean(),
    /** Rated to carry a transmitter's power. */
    transmitRated: z.boolean(),
    /** 1-based position of a switch, else null. */
    position: z.number().int().positive().nullable(),
  }),
});

export const positionSourcePartSchema = z.strictObject({
  ...common,
  kind: z.literal('position-source'),
  figures: z.strictObject({
    supplyVoltageV: f,
    currentA: f,
    noiseFigureDb: optionalFigure,
    /** Net gain the receiver wants before its socket, dB: least and most. */
    gainMinDb: optionalFigure,
    gainMaxDb: optionalFigure,
  }),
  traits: z.strictObject({ integralAntenna: z.boolean(), display: z.boolean() }),
});

export const powerClassSchema = z.enum([
  'battery-bank',
  'starter-battery',
  'panel',
  'breaker',
  'fuse-holder',
  'inverter',
  'converter',
  'charger',
]);
export type PowerClass = z.infer<typeof powerClassSchema>;

export const powerPartSchema = z.strictObject({
  ...common,
  kind: z.literal('power'),
  powerClass: powerClassSchema,
  figures: z.strictObject({
    voltageV: f,
    /** Rated current of a breaker, fuse holder, inverter or converter, A. */
    ratingA: optionalFigure,
    /** Capacity of a battery, Ah. */
    capacityAh: optionalFigure,
  }),
  traits: z.strictObject({}),
});

export const standaloneClassSchema = z.enum([
  'beacon-406',
  'personal-beacon',
  'radar-sart',
  'ais-sart',
  'handheld-vhf',
  'handheld-vhf-dsc',
  'ais-mob',
  'handheld-satellite',
]);
export type StandaloneClass = z.infer<typeof standaloneClassSchema>;

/** A set complete with its own antenna and battery. */
export const standalonePartSchema = z.strictObject({
  ...common,
  kind: z.literal('standalone'),
  standaloneClass: standaloneClassSchema,
  figures: z.strictObject({
    txPowerW: f,
    frequencyMhz: f,
    rxSensitivityDbm: f,
    gainDbi: f,
    lowTxPowerW: optionalFigure,
    /** Homing signal of a beacon: power, W, and carrier, MHz. */
    homingPowerW: optionalFigure,
    homingFrequencyMhz: optionalFigure,
  }),
  traits: z.strictObject({ dsc: z.boolean(), internalGnss: z.boolean() }),
});

export const equipmentClassSchema = z.enum([
  'radar',
  'display',
  'data-bus',
  'router',
  'lamp',
  'compass',
  'autopilot',
  'wind-generator',
  'earth-plate',
  'dead-cable',
]);
export type EquipmentClass = z.infer<typeof equipmentClassSchema>;

/** Anything else aboard that the radio installation depends on or must keep clear of. */
export const equipmentPartSchema = z.strictObject({
  ...common,
  kind: z.literal('equipment'),
  equipmentClass: equipmentClassSchema,
  figures: z.record(z.string(), f),
  traits: z.strictObject({ needsSupply: z.boolean() }),
});

/** Coaxial cable. Loss in dB per 100 m is lossK1 * sqrt(f) + lossK2 * f, f in MHz, at 20 degrees C. */
export const coaxPartSchema = z.strictObject({
  ...common,
  kind: z.literal('coax'),
  figures: z.strictObject({
    lossK1: f,
    lossK2: f,
    /** Relative tolerance of the loss, per cent. */
    lossTolerancePercent: f,
    minFrequencyMhz: f,
    maxFrequencyMhz: f,
    impedanceOhm: f,
    velocityFactor: f,
    outsideDiameterMm: f,
    bendOnceMm: f,
    massGPerM: f,
  }),
  traits: z.strictObject({}),
});

/** A plug, socket or mated pair at the end of a run, or the joint between two runs. */
export const connectorPartSchema = z.strictObject({
  ...common,
  kind: z.literal('connector'),
  connectorType: connectorTypeSchema,
  lossTable: lossTableSchema,
  figures: z.strictObject({ maxFrequencyMhz: f }),
  traits: z.strictObject({}),
});

/** DC conductor, one core. */
export const conductorPartSchema = z.strictObject({
  ...common,
  kind: z.literal('conductor'),
  figures: z.strictObject({ areaMm2: f, ohmPerKm: f, ampacityA: f }),
  traits: z.strictObject({ awg: z.string().nullable() }),
});

export const partSchema = z.discriminatedUnion('kind', [
  radioPartSchema,
  antennaPartSchema,
  inlinePartSchema,
  positionSourcePartSchema,
  powerPartSchema,
  standalonePartSchema,
  equipmentPartSchema,
  coaxPartSchema,
  connectorPartSchema,
  conductorPartSchema,
]);
export type Part = z.infer<typeof partSchema>;
export type PartKind = Part['kind'];
export type PartOf<K extends PartKind> = Extract<Part, { kind: K }>;
/** Parts that are placed on the drawing as items; the others are chosen for a run or a feed. */
export type PlaceablePart = Exclude<Part, { kind: 'coax' | 'connector' | 'conductor' }>;
