import { z } from 'zod';

const stationXSchema = z.number().min(-20).max(200);
const heightZSchema = z.number().min(-20).max(150);

/**
 * Position in the boat: x metres aft of the stem, y metres to port (+) or starboard (-) of the centreline, z metres above
 * the waterline.
 */
export const positionSchema = z.strictObject({
  xM: stationXSchema,
  yM: z.number().min(-50).max(50),
  zM: heightZSchema,
});
export type Position = z.infer<typeof positionSchema>;

export const materialSchema = z.enum(['grp', 'wood', 'steel', 'aluminium', 'carbon', 'ferrocement', 'fabric']);
export type Material = z.infer<typeof materialSchema>;

export const boatKindSchema = z.enum([
  'sloop',
  'cutter',
  'ketch',
  'schooner',
  'catamaran',
  'motor-yacht',
  'trawler',
  'open-boat',
]);
export type BoatKind = z.infer<typeof boatKindSchema>;

export const mastSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  xM: stationXSchema,
  footZM: heightZSchema,
  truckZM: heightZSchema,
  /** Fore-and-aft size of the section, mm. */
  sectionMm: z.number().positive().max(2000).default(180),
  material: materialSchema,
  stepped: z.enum(['deck', 'keel']),
  spreaderZM: z.array(heightZSchema).default([]),
  /** Height of the boom above the waterline, m; null for a mast without one. */
  boomZM: heightZSchema.nullable().default(null),
  boomLengthM: z.number().nonnegative().max(60).default(0),
});
export type Mast = z.infer<typeof mastSchema>;

/** A fixed structure other than a mast; what stands on it is lost with it. */
export const fittingSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  kind: z.enum(['arch', 'hardtop', 'radar-pole', 'pulpit', 'pushpit', 'wheelhouse', 'flybridge', 'bowsprit', 'pole']),
  xForeM: stationXSchema,
  xAftM: stationXSchema,
  zBaseM: heightZSchema,
  zTopM: heightZSchema,
  material: materialSchema,
});
export type Fitting = z.infer<typeof fittingSchema>;

export const compartmentSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  side: z.enum(['centre', 'port', 'starboard']),
  xForeM: stationXSchema,
  xAftM: stationXSchema,
  /** Sole or bottom of the space, m above the waterline (negative below it). */
  soleZM: heightZSchema,
});
export type Compartment = z.infer<typeof compartmentSchema>;

/** The deckhouse or coachroof seen from the side. */
export const deckhouseSchema = z.strictObject({
  xForeM: stationXSchema,
  xAftM: stationXSchema,
  zTopM: heightZSchema,
  material: materialSchema,
});

export const boatSchema = z.strictObject({
  name: z.string(),
  kind: boatKindSchema,
  homePort: z.string().default(''),
  loaM: z.number().min(2).max(120),
  lwlM: z.number().min(2).max(120),
  beamM: z.number().min(0.5).max(40),
  draughtM: z.number().min(0.1).max(15),
  airDraughtM: z.number().min(0.3).max(90),
  freeboardForeM: z.number().min(0).max(15),
  freeboardMidM: z.number().min(0).max(15),
  freeboardAftM: z.number().min(0).max(15),
  hullMaterial: materialSchema,
  deckMaterial: materialSchema,
  speedKn: z.number().min(0).max(80).default(6),
  masts: z.array(mastSchema).default([]),
  deckhouses: z.array(deckhouseSchema).default([]),
  fittings: z.array(fittingSchema).default([]),
  compartments: z.array(compartmentSchema).default([]),
});
export type Boat = z.infer<typeof boatSchema>;

/** A named spot that parts snap to and runs pass through. */
export const placeSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  position: positionSchema,
  /** Id of the mast or fitting it belongs to; null for the hull itself. */
  structureId: z.string().nullable(),
  /** Id of the compartment it is in; null on deck and aloft. */
  compartmentId: z.string().nullable(),
  outdoors: z.boolean(),
  /** What is overhead: decides whether a sky-seeing antenna works here. */
  overhead: z.enum(['open', 'grp', 'wood', 'fabric', 'metal', 'carbon']),
});
export type Place = z.infer<typeof placeSchema>;
export type Overhead = Place['overhead'];
