import { type Boat, boatSchema, type Mast, type Overhead, type Place } from './boat.ts';
import { DEFAULT_MARGIN } from './margin.ts';
import {
  conditionsSchema,
  PROJECT_VERSION,
  type Project,
  redundancySettingsSchema,
  type Settings,
  type Station,
} from './project.ts';
import {
  type BoatNumbers,
  compartmentsOf,
  deckhouseOf,
  deckZM,
  fittingsOf,
  mastsOf,
  PROPORTIONS,
  toCm,
  topZM,
} from './proportions.ts';

/** What a new boat is made from; metres. `mastCount` is the kind's usual number when left out. */
export interface NewProjectInput {
  readonly name: string;
  readonly kind: Boat['kind'];
  readonly loaM: number;
  readonly beamM: number;
  readonly draughtM: number;
  readonly airDraughtM: number;
  /** Amidships, above the waterline. */
  readonly freeboardM: number;
  readonly mastCount?: number;
}

/** Most masts a new boat is drawn with. */
export const MAX_NEW_MASTS = 3;

/** Loss at which 40 per cent of the power is gone: 10 log10(1 / 0.6) = 2.218 dB. */
export const FORTY_PERCENT_DB = 10 * Math.log10(1 / 0.6);

/**
 * A believable boat with nothing fitted yet, from six numbers. Proportions are common practice (see proportions.ts);
 * the hull is taken as GRP. Everything can be edited afterwards.
 * @throws RangeError with a sentence for the user when a number is outside what the document accepts, or the air draught
 * is not above the freeboard.
 */
export function newProject(input: NewProjectInput): Project {
  const boat = checkedNumbers(input);
  const masts = mastsOf(boat);
  return {
    format: 'backstay',
    version: PROJECT_VERSION,
    title: `${input.name}: radio installation`,
    layoutName: 'As found',
    purpose: '',
    preparedBy: '',
    revision: '1',
    boat: boatOf(input.name, boat, masts),
    places: placesOf(boat, masts),
    parts: [],
    items: [],
    runs: [],
    feeds: [],
    dataLinks: [],
    stations: DEFAULT_STATIONS.map((station) => ({ ...station })),
    measurements: [],
    findingOverrides: [],
    settings: defaultSettings(),
    alternatives: [],
    notes: '',
  };
}

/** Limits and the margin a project starts with. */
export function defaultSettings(): Settings {
  return {
    horizonRule: 'four-thirds-earth',
    feederLossLimitDb: FORTY_PERCENT_DB,
    voltageDropLimitPercent: 3,
    margin: DEFAULT_MARGIN.map((item) => ({ ...item })),
    conditions: conditionsSchema.parse({}),
    redundancy: redundancySettingsSchema.parse({}),
  };
}

/**
 * The far ends a project starts with. Heights, powers and feeder losses are common practice, no source; 2.15 dBi is a
 * half-wave whip; -107 dBm is the VHF receiver limit of 2 uV emf for 20 dB SINAD (ITU-R M.489, from memory). A handheld's
 * short antenna is taken 5 dB below a half-wave. The mobile mast sends 20 W per carrier into 15 dBi and hears -101 dBm
 * (3GPP TS 36.104 wide-area base station, from memory); the access point radiates 100 mW (EN 300 328, from memory) and hears
 * -85 dBm at a useful rate.
 */
export const DEFAULT_STATIONS: readonly Station[] = [
  station('like-yacht', 'A like yacht', 'yacht', 15, 2.15, 2, 25, 2),
  station('small-craft', 'Small craft with a handheld', 'small-craft', 2, -2.85, 0, 5, 0),
  station('ship-bridge', "A ship's bridge", 'ship', 25, 2.15, 2, 25, 12.5),
  station('coast-station', 'Coast station', 'coast', 100, 6, 3, 25, 12.5),
  station('rescue-helicopter', 'Rescue helicopter', 'helicopter', 150, 0, 1, 10, 0),
  station('raft-handheld', 'Handheld in a raft', 'raft', 1.2, -2.85, 0, 5, 0),
  {
    ...station('mobile-mast', 'Mobile-network mast', 'mobile-mast', 40, 15, 3, 0, 0),
    cellularPowerW: 20,
    sensitivityDbm: -101,
  },
  {
    ...station('harbour-wifi', 'Harbour Wi-Fi', 'access-point', 6, 5, 1, 0, 0),
    wifiPowerW: 0.04,
    sensitivityDbm: -85,
  },
];

function station(
  id: string,
  name: string,
  kind: Station['kind'],
  antennaHeightM: number,
  gainDbi: number,
  feederLossDb: number,
  voicePowerW: number,
  aisPowerW: number,
): Station {
  const other = { cellularPowerW: 0, wifiPowerW: 0, sensitivityDbm: -107 };
  return { id, name, kind, antennaHeightM, gainDbi, feederLossDb, voicePowerW, aisPowerW, ...other };
}

function checkedNumbers(input: NewProjectInput): BoatNumbers {
  const mastCount = input.mastCount ?? PROPORTIONS[input.kind].masts.length;
  const shape = boatSchema.shape;
  const checks = [
    ['Length over all', input.loaM, shape.loaM],
    ['Beam', input.beamM, shape.beamM],
    ['Draught', input.draughtM, shape.draughtM],
    ['Air draught', input.airDraughtM, shape.airDraughtM],
    ['Freeboard', input.freeboardM, shape.freeboardMidM],
  ] as const;
  for (const [name, value, schema] of checks) {
    if (schema.safeParse(value).success) continue;
    throw new RangeError(`${name} must be a number from ${schema.minValue} to ${schema.maxValue} m; ${value} is not.`);
  }
  if (!Number.isInteger(mastCount) || mastCount < 0 || mastCount > MAX_NEW_MASTS) {
    throw new RangeError(`Masts must be a whole number from 0 to ${MAX_NEW_MASTS}; ${mastCount} is not.`);
  }
  if (input.airDraughtM <= input.freeboardM) {
    throw new RangeError(
      `Air draught (${input.airDraughtM} m) must be more than the freeboard (${input.freeboardM} m): ` +
        'it is the height of the highest point above the waterline.',
    );
  }
  return { ...input, mastCount };
}

function boatOf(name: string, boat: BoatNumbers, masts: Mast[]): Boat {
  const { lwlShare, speedKn } = PROPORTIONS[boat.kind];
  const house = deckhouseOf(boat);
  return {
    name,
    kind: boat.kind,
    homePort: '',
    loaM: boat.loaM,
    lwlM: Math.max(2, toCm(lwlShare * boat.loaM)),
    beamM: boat.beamM,
    draughtM: boat.draughtM,
    airDraughtM: boat.airDraughtM,
    freeboardForeM: Math.min(15, toCm(deckZM(boat, 0))),
    freeboardMidM: boat.freeboardM,
    freeboardAftM: Math.min(15, toCm(deckZM(boat, 1))),
    hullMaterial: 'grp',
    deckMaterial: 'grp',
    speedKn,
    masts,
    deckhouses: house ? [house] : [],
    fittings: fittingsOf(boat),
    compartments: compartmentsOf(boat),
  };
}

/** The named spots such a boat has: aloft, on deck, at the helm and below. */
function placesOf(boat: BoatNumbers, masts: readonly Mast[]): Place[] {
  const places = masts.flatMap((mast) => mastPlaces(mast));
  const at = placeMaker(boat);
  const fittings = fittingsOf(boat);
  for (const fitting of fittings) {
    if (fitting.kind === 'wheelhouse') {
      places.push(
        at('wheelhouse-roof', 'Wheelhouse roof', (fitting.xForeM + fitting.xAftM) / 2, fitting.zTopM, fitting.id),
      );
    } else {
      const xM = fitting.kind === 'pulpit' ? fitting.xForeM + 0.2 : (fitting.xForeM + fitting.xAftM) / 2;
      places.push(at(`${fitting.id}-top`, fitting.name, xM, fitting.zTopM, fitting.id));
    }
  }
  return [...places, ...placesInTheHull(boat)];
}

function mastPlaces(mast: Mast): Place[] {
  const open = { structureId: mast.id, compartmentId: null, outdoors: true, overhead: 'open' } as const;
  const spot = (id: string, name: string, zM: number, structureId: string | null = mast.id): Place => ({
    ...open,
    id: `${mast.id}-${id}`,
    name: `${mast.name}, ${name}`,
    position: { xM: mast.xM, yM: 0, zM: toCm(zM) },
    structureId,
  });
  const spreaders = mast.spreaderZM.map((zM, index) =>
    spot(
      `spreaders-${index + 1}`,
      index === 0 ? 'lower spreaders' : index === 1 ? 'upper spreaders' : 'top spreaders',
      zM,
    ),
  );
  // The foot is on the deck: a joint there stays aboard when the mast goes.
  return [spot('head', 'masthead', mast.truckZM), ...spreaders, spot('foot', 'foot', mast.footZM, null)];
}

function placesInTheHull(boat: BoatNumbers): Place[] {
  const { beamM, kind, loaM } = boat;
  const at = placeMaker(boat);
  const below = (
    id: string,
    name: string,
    share: number,
    yM: number,
    space: string,
    overhead: Overhead = 'grp',
  ): Place => {
    const sole = compartmentsOf(boat).find((compartment) => compartment.id === space)?.soleZM ?? 0;
    const zM = id === 'nav-station' ? sole + 1.1 : sole + 0.25;
    const place = at(id, name, share * loaM, Math.min(zM, deckZM(boat, share)), null, yM);
    return { ...place, compartmentId: space, outdoors: false, overhead };
  };
  const lazarette = below('lazarette-place', 'Lazarette', 0.91, 0, 'lazarette');
  if (kind === 'open-boat') {
    return [
      at('console', 'Console', 0.5 * loaM, deckZM(boat, 0.5) + 0.3, null),
      at('bow', 'Bow', 0.05 * loaM, deckZM(boat, 0), null),
      at('stern', 'Stern', 0.97 * loaM, deckZM(boat, 1), null),
      below('battery-space', 'Battery space', 0.7, 0, 'well'),
      lazarette,
    ];
  }
  const helmShare = PROPORTIONS[kind].sails ? 0.82 : 0.36;
  const helm = at('helm', 'Helm', helmShare * loaM, topZM(boat, PROPORTIONS[kind].sails ? 0.82 : 0.5) + 0.9, null);
  const isCat = kind === 'catamaran';
  return [
    PROPORTIONS[kind].sails ? helm : wheelhouseHelm(boat),
    below(
      'nav-station',
      'Nav station',
      isCat ? 0.48 : 0.5,
      toCm((isCat ? 0.35 : -0.22) * beamM),
      isCat ? 'port-hull' : 'saloon',
    ),
    below('battery-space', 'Battery space', 0.55, isCat ? toCm(-0.35 * beamM) : 0, isCat ? 'starboard-hull' : 'saloon'),
    below(
      'engine-space-place',
      'Engine space',
      0.72,
      isCat ? toCm(0.35 * beamM) : 0,
      isCat ? 'port-hull' : 'engine-space',
    ),
    lazarette,
  ];
}

/** The helm under a wheelhouse roof, at the height of a dashboard. */
function wheelhouseHelm(boat: BoatNumbers): Place {
  const share = PROPORTIONS[boat.kind].house?.from ?? 0.4;
  const zM = Math.min(deckZM(boat, share) + 0.9, topZM(boat, share + 0.05) - 0.1);
  const place = placeMaker(boat)(
    'wheelhouse-helm',
    'Wheelhouse helm',
    (share + 0.06) * boat.loaM,
    zM,
    null,
    -0.2 * boat.beamM,
  );
  return { ...place, outdoors: false, overhead: 'grp' };
}

function placeMaker(boat: BoatNumbers) {
  return (id: string, name: string, xM: number, zM: number, structureId: string | null, yM = 0): Place => ({
    id,
    name,
    position: { xM: toCm(Math.min(xM, boat.loaM)), yM: toCm(yM), zM: toCm(zM) },
    structureId,
    compartmentId: null,
    outdoors: true,
    overhead: 'open',
  });
}
