import { z } from 'zod';
import { boatSchema, placeSchema, positionSchema } from './boat.ts';
import { figuresSchema } from './figure.ts';
import { partSchema } from './part.ts';
import { pictureSchema, underlaySchema } from './picture.ts';

/** Version of the file format this program writes. Older files migrate forward; newer ones are refused. */
export const PROJECT_VERSION = 1;

/** Longest cable or distance aboard that is believed, m: beyond it a figure is a slip of the pen. */
const MAX_LENGTH_M = 2000;

export const statusSchema = z.enum(['keep', 'new', 'remove', 'unknown', 'not-accessible']);
export type Status = z.infer<typeof statusSchema>;

/** Facts about one item as found; every key is optional because a first visit rarely learns them all. */
export const itemFactsSchema = z.strictObject({
  /** Overrides the place's `overhead`. */
  overhead: placeSchema.shape.overhead.optional(),
  outdoors: z.boolean().optional(),
  /** A joint or connector found wet or corroded. */
  wet: z.boolean().optional(),
  /** `tape` only, or a proper self-amalgamating / heat-shrink seal. */
  seal: z.enum(['none', 'tape', 'sealed']).optional(),
  mount: z.enum(['metal', 'insulated']).optional(),
  /** Battery of a handheld or terminal is charged. */
  charged: z.boolean().optional(),
  /** Aboard practice: unplugged from antenna and supply when lightning is about. */
  unpluggedInStorms: z.boolean().optional(),
  /** Goes into the raft: kept in the grab bag or beside it. */
  inGrabBag: z.boolean().optional(),
  /** To whom a beacon is registered. */
  registration: z.enum(['this-boat', 'another-owner', 'none']).optional(),
  bracket: z.enum(['manual', 'float-free']).optional(),
  /** Lead of an emergency antenna, m, and its plug. */
  leadLengthM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  leadConnector: z.string().optional(),
  /** Height of an HF wire's lower insulator above the deck, m. */
  lowerInsulatorAboveDeckM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  insulatorSleeved: z.boolean().optional(),
  /** What the tuner's earth strap is bolted to. */
  earthTo: z.enum(['hull-stud', 'plate', 'seacock', 'none']).optional(),
  /** Distance to the nearest seat or regular standing place, m. */
  nearestPersonM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  /** Length of wire a lead-in has inside a metal hull, m. */
  leadInInsideMetalM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  /** Height of a standing person's eye where the radar is, m above the waterline. */
  standingEyeZM: positionSchema.shape.zM.optional(),
  /** Distance from an antenna to the nearest metal structure, m. */
  nearestMetalM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  /** Diameter of a pole that shadows the antenna and its distance, m. */
  shadowPoleDiameterM: z.number().positive().max(MAX_LENGTH_M).optional(),
  shadowPoleDistanceM: z.number().positive().max(MAX_LENGTH_M).optional(),
  /** Folded or laid down under way at times. */
  foldsDown: z.boolean().optional(),
});
export type ItemFacts = z.infer<typeof itemFactsSchema>;

/** A placed part. `overrides` replace single figures or traits of the part for this item only. */
export const itemSchema = z.strictObject({
  id: z.string(),
  /** Designation on the drawing and labels, e.g. `VHF-1`. */
  tag: z.string(),
  partId: z.string(),
  name: z.string().default(''),
  position: positionSchema,
  /** Upper end of a wire antenna. */
  endPosition: positionSchema.nullable().default(null),
  placeId: z.string().nullable().default(null),
  status: statusSchema.default('keep'),
  overrides: z
    .strictObject({ figures: figuresSchema.default({}), traits: z.record(z.string(), z.json()).default({}) })
    .default({ figures: {}, traits: {} }),
  facts: itemFactsSchema.default({}),
  notes: z.string().default(''),
});
export type Item = z.infer<typeof itemSchema>;

export const endpointSchema = z.strictObject({ itemId: z.string(), portId: z.string() });
export type Endpoint = z.infer<typeof endpointSchema>;

export const runFactsSchema = z.strictObject({
  /** Surplus coiled up, m. */
  coiledM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  /** Length the route would need, m, where it is known to differ from what is fitted. */
  neededLengthM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  supported: z.boolean().optional(),
  /** Tightest bend found, mm radius. */
  bendRadiusMm: z.number().positive().max(10_000).optional(),
  /** Gap to the nearest power cable it runs beside, mm, and for how far, m. */
  powerCableGapMm: z.number().nonnegative().max(100_000).optional(),
  powerCableAlongM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  /** Lead-in inside a metal hull, m. */
  insideMetalM: z.number().nonnegative().max(MAX_LENGTH_M).optional(),
  wet: z.boolean().optional(),
});
export type RunFacts = z.infer<typeof runFactsSchema>;

/** A coaxial run (or HF lead-in) between two RF ports. */
export const runSchema = z.strictObject({
  id: z.string(),
  /** Cable number on the drawing and on both labels, e.g. `W01`. */
  number: z.string(),
  cableId: z.string(),
  from: endpointSchema,
  to: endpointSchema,
  /** Bends between the two ports, in order from `from`. */
  via: z.array(z.strictObject({ position: positionSchema, placeId: z.string().nullable() })).default([]),
  /** Added to the routed length for service loops, m. */
  slackM: z.number().nonnegative().max(MAX_LENGTH_M).default(0),
  /** Length measured on the boat, m; when set it replaces the routed length. */
  measuredLengthM: z.number().nonnegative().max(MAX_LENGTH_M).nullable().default(null),
  connectorFromId: z.string().nullable().default(null),
  connectorToId: z.string().nullable().default(null),
  /** Text of the labels at the ends when it is not the run's own number. */
  labelText: z.string().nullable().default(null),
  status: statusSchema.default('keep'),
  facts: runFactsSchema.default({}),
  notes: z.string().default(''),
});
export type Run = z.infer<typeof runSchema>;

/** A DC feed: out-and-back pair from a source, panel or breaker to a load. */
export const feedSchema = z.strictObject({
  id: z.string(),
  number: z.string(),
  from: endpointSchema,
  to: endpointSchema,
  conductorId: z.string(),
  /** One-way length, m. */
  lengthM: z.number().nonnegative().max(MAX_LENGTH_M),
  /** Fuse in this feed; null where there is none. A breaker at its source is an item of its own. */
  fuse: z
    .strictObject({
      ratingA: z.number().positive().max(10_000),
      fromSourceM: z.number().nonnegative().max(MAX_LENGTH_M),
    })
    .nullable()
    .default(null),
  status: statusSchema.default('keep'),
  notes: z.string().default(''),
});
export type Feed = z.infer<typeof feedSchema>;

export const carriesSchema = z.enum(['position', 'heading', 'ais', 'network']);
export const dataLinkSchema = z.strictObject({
  id: z.string(),
  number: z.string(),
  from: endpointSchema,
  to: endpointSchema,
  carries: z.array(carriesSchema).min(1),
  standard: z.enum(['nmea-0183', 'nmea-2000', 'ethernet', 'wifi']),
  status: statusSchema.default('keep'),
  notes: z.string().default(''),
});
export type DataLink = z.infer<typeof dataLinkSchema>;

/** A far end that ranges are quoted to. */
export const stationSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  kind: z.enum(['yacht', 'small-craft', 'ship', 'coast', 'raft', 'helicopter', 'mobile-mast', 'access-point']),
  antennaHeightM: z.number().positive().max(5000),
  gainDbi: z.number().min(-20).max(20),
  feederLossDb: z.number().nonnegative().max(30),
  voicePowerW: z.number().nonnegative().max(100),
  /** 0 when the station carries no AIS transmitter. */
  aisPowerW: z.number().nonnegative().max(100),
  /** Of a mast of the mobile networks and of a Wi-Fi access point ashore; 0 for none. */
  cellularPowerW: z.number().nonnegative().max(100).default(0),
  wifiPowerW: z.number().nonnegative().max(100).default(0),
  sensitivityDbm: z.number().min(-140).max(-50),
});
export type Station = z.infer<typeof stationSchema>;

export const subjectSchema = z.strictObject({
  kind: z.enum(['item', 'run', 'feed', 'link', 'place', 'structure', 'compartment', 'boat']),
  id: z.string(),
});
/** What a finding, an element or a component points at. `id` is `boat` for the boat itself. */
export type Subject = z.infer<typeof subjectSchema>;

export const measurementSchema = z.strictObject({
  id: z.string(),
  subject: subjectSchema,
  kind: z.enum([
    'vswr',
    'open-end-vswr',
    'insertion-loss-db',
    'forward-power-w',
    'reflected-power-w',
    'supply-idle-v',
    'supply-transmit-v',
  ]),
  value: z.number(),
  frequencyMhz: z.number().positive().max(100_000).nullable(),
  /** ISO date, or null where the record gives none. */
  date: z.string().nullable(),
  instrument: z.string().default(''),
  note: z.string().default(''),
});
export type Measurement = z.infer<typeof measurementSchema>;

/** A photo of something aboard, as evidence or for whoever works on it. */
export const photoSchema = z.strictObject({
  id: z.string(),
  pictureId: z.string(),
  subject: subjectSchema,
  caption: z.string(),
  /** ISO date, or null where it is not known. */
  date: z.string().nullable(),
});
export type Photo = z.infer<typeof photoSchema>;

/** A finding that a person overruled, and why; kept and printed. */
export const findingOverrideSchema = z.strictObject({
  findingKey: z.string(),
  reason: z.string().min(1),
  by: z.string().default(''),
});
export type FindingOverride = z.infer<typeof findingOverrideSchema>;

export const marginItemSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  lossDb: z.number().min(0).max(40),
  source: z.string(),
});
export type MarginItem = z.infer<typeof marginItemSchema>;

export const horizonRuleSchema = z.enum(['four-thirds-earth', 'trade-2.25', 'trade-2.2', 'geometric']);
export type HorizonRule = z.infer<typeof horizonRuleSchema>;

/** What no drawing shows: the noise around the boat and the ionosphere above it, as the user states them. */
export const conditionsSchema = z.strictObject({
  /** Man-made noise by the categories of Rec. ITU-R P.372. */
  noise: z.enum(['city', 'residential', 'rural', 'quiet-rural']).default('rural'),
  /** Lightning noise at MF and HF, over the man-made floor. */
  lightning: z.enum(['none', 'moderate', 'strong', 'severe']).default('none'),
  /** Critical frequency of the F2 layer, MHz: its highest of the day and its lowest of the night. */
  foF2DayMhz: z.number().min(0.5).max(25).default(8),
  foF2NightMhz: z.number().min(0.5).max(25).default(4),
  /** M(3000)F2, what a 3000 km hop carries over what goes straight up. */
  m3000: z.number().min(2).max(4).default(3),
  /** Where and when, for the height of the sun. */
  latitudeDeg: z.number().min(-90).max(90).default(45),
  month: z.number().int().min(1).max(12).default(7),
  /** Twelve-month mean sunspot number R12. */
  sunspotNumber: z.number().min(0).max(300).default(80),
});
export type Conditions = z.infer<typeof conditionsSchema>;

/** A failure of the user's own: what goes down together. */
export const ownEventSchema = z.strictObject({
  id: z.string().min(1),
  label: z.string().min(1),
  /** What is down: items, runs, feeds, links and structures; an item of a compartment or place stands for itself. */
  hits: z.array(subjectSchema).min(1),
  note: z.string().default(''),
});
export type OwnEvent = z.infer<typeof ownEventSchema>;

/** A chance in the user's own words, in place of an assumption, per cent on one passage. */
export const chanceSchema = z.strictObject({
  lowPercent: z.number().min(0).max(100),
  percent: z.number().min(0).max(100),
  highPercent: z.number().min(0).max(100),
  source: z.string().min(1),
});
export type Chance = z.infer<typeof chanceSchema>;

/** What the failure study is made for. */
export const redundancySettingsSchema = z.strictObject({
  /** Events left out of the matrix and out of the common causes, by id. */
  excludedEventIds: z.array(z.string()).default([]),
  events: z.array(ownEventSchema).default([]),
  /** By kind of component (`radio`) or event (`mast`, `lightning`), or by the id of one of them. */
  chances: z.record(z.string(), chanceSchema).default({}),
  /** Length of the passage the chances are for, days. */
  passageDays: z.number().min(0.1).max(400).default(20),
  /** Rule packs the boat is held against, by id. */
  rulePacks: z.array(z.string()).default([]),
  /** Where the boat goes, for the packs that ask. */
  seaArea: z.enum(['A1', 'A2', 'A3', 'A4']).default('A2'),
});
export type RedundancySettings = z.infer<typeof redundancySettingsSchema>;

export const settingsSchema = z.strictObject({
  horizonRule: horizonRuleSchema,
  /** Feeder loss above which a path is flagged, dB. 2.218 dB is 40 per cent. */
  feederLossLimitDb: z.number().positive().max(20),
  voltageDropLimitPercent: z.number().positive().max(20),
  /** The real-life margin between the typical and the dependable range, item by item. */
  margin: z.array(marginItemSchema),
  conditions: conditionsSchema.prefault({}),
  redundancy: redundancySettingsSchema.prefault({}),
});
export type Settings = z.infer<typeof settingsSchema>;

const layoutShape = {
  items: z.array(itemSchema),
  runs: z.array(runSchema),
  feeds: z.array(feedSchema),
  dataLinks: z.array(dataLinkSchema),
};
/** Another layout of the same boat, kept beside the current one for comparison. */
export const alternativeSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  note: z.string().default(''),
  ...layoutShape,
});
export type Alternative = z.infer<typeof alternativeSchema>;

export const projectSchema = z.strictObject({
  format: z.literal('backstay'),
  version: z.literal(PROJECT_VERSION),
  title: z.string(),
  /** Name of the current layout, e.g. `As found`. */
  layoutName: z.string(),
  /** Remark on the current layout; an alternative carries its own. */
  layoutNote: z.string().optional(),
  purpose: z.string().default(''),
  preparedBy: z.string().default(''),
  revision: z.string().default('1'),
  boat: boatSchema,
  places: z.array(placeSchema),
  parts: z.array(partSchema).default([]),
  ...layoutShape,
  stations: z.array(stationSchema),
  measurements: z.array(measurementSchema).default([]),
  findingOverrides: z.array(findingOverrideSchema).default([]),
  settings: settingsSchema,
  alternatives: z.array(alternativeSchema).default([]),
  notes: z.string().default(''),
  /** Pictures of the user's own that travel in the document. */
  pictures: z.array(pictureSchema).optional(),
  /** Whether they are kept in a folder beside the document instead of in it. */
  picturesBeside: z.literal(true).optional(),
  /** The picture that lies under the drawing. */
  underlay: underlaySchema.optional(),
  photos: z.array(photoSchema).optional(),
});
export type Project = z.infer<typeof projectSchema>;
