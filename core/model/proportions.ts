import type { Boat, BoatKind, Compartment, Fitting, Mast } from './boat.ts';

/** The six numbers a boat is first known by, checked. */
export interface BoatNumbers {
  readonly kind: BoatKind;
  readonly loaM: number;
  readonly beamM: number;
  readonly draughtM: number;
  readonly airDraughtM: number;
  readonly freeboardM: number;
  readonly mastCount: number;
}

/**
 * Proportions of a kind of boat. All are common practice read off general-arrangement drawings of such boats, without a
 * source: they only give a first drawing, and every number they make can be edited. Positions are shares of the length
 * over all, measured aft from the stem.
 */
interface Proportions {
  readonly lwlShare: number;
  /** Freeboard at the bow and stern as a multiple of the freeboard amidships. */
  readonly foreSheer: number;
  readonly aftSheer: number;
  readonly sails: boolean;
  /** Masts from forward: station, and truck height as a share of the tallest. */
  readonly masts: readonly {
    readonly x: number;
    readonly height: number;
    readonly name: string;
    readonly boom: number;
  }[];
  /** Deckhouse from, to, and its height above deck as a share of the length, with the most it can be, m. */
  readonly house: {
    readonly from: number;
    readonly to: number;
    readonly height: number;
    readonly mostM: number;
  } | null;
  readonly arch: boolean;
  readonly wheelhouse: boolean;
  readonly speedKn: number;
}

const main = (x: number, boom: number) => ({ x, height: 1, name: 'Main mast', boom });
const coachroof = { from: 0.28, to: 0.66, height: 0.045, mostM: 0.75 };

export const PROPORTIONS: Readonly<Record<BoatKind, Proportions>> = {
  sloop: sail({ masts: [{ ...main(0.39, 0.38), name: 'Mast' }], house: coachroof }),
  cutter: sail({ masts: [{ ...main(0.43, 0.38), name: 'Mast' }], house: coachroof }),
  ketch: sail({
    masts: [main(0.385, 0.33), { x: 0.775, height: 0.7, name: 'Mizzen mast', boom: 0.18 }],
    house: coachroof,
    foreSheer: 1.3,
  }),
  schooner: sail({
    masts: [{ x: 0.3, height: 0.88, name: 'Fore mast', boom: 0.24 }, main(0.57, 0.36)],
    house: { ...coachroof, from: 0.34 },
    lwlShare: 0.84,
    foreSheer: 1.35,
  }),
  catamaran: sail({
    masts: [{ ...main(0.4, 0.36), name: 'Mast' }],
    house: { from: 0.34, to: 0.7, height: 0.1, mostM: 1.5 },
    lwlShare: 0.97,
    foreSheer: 1.1,
    aftSheer: 0.9,
    arch: true,
    speedKn: 8,
  }),
  'motor-yacht': {
    lwlShare: 0.9,
    foreSheer: 1.4,
    aftSheer: 0.9,
    sails: false,
    masts: [{ x: 0.58, height: 1, name: 'Signal mast', boom: 0 }],
    house: { from: 0.3, to: 0.74, height: 0.17, mostM: 2.3 },
    arch: true,
    wheelhouse: true,
    speedKn: 18,
  },
  trawler: {
    lwlShare: 0.92,
    foreSheer: 1.6,
    aftSheer: 0.95,
    sails: false,
    masts: [{ x: 0.68, height: 1, name: 'Mast', boom: 0 }],
    house: { from: 0.26, to: 0.7, height: 0.17, mostM: 2.2 },
    arch: false,
    wheelhouse: true,
    speedKn: 9,
  },
  'open-boat': {
    lwlShare: 0.93,
    foreSheer: 1.25,
    aftSheer: 1,
    sails: false,
    masts: [],
    house: null,
    arch: false,
    wheelhouse: false,
    speedKn: 15,
  },
};

function sail(own: Partial<Proportions> & Pick<Proportions, 'masts' | 'house'>): Proportions {
  return {
    lwlShare: 0.87,
    foreSheer: 1.2,
    aftSheer: 1.05,
    sails: true,
    arch: false,
    wheelhouse: false,
    speedKn: 6,
    ...own,
  };
}

/** Rounds to centimetres; the `+ 0` keeps a negative zero out of the document. */
export const toCm = (valueM: number): number => Math.round(valueM * 100) / 100 + 0;

/** Height of the deck edge above the waterline at a share of the length, m: straight lines bow, midships, stern. */
export function deckZM(boat: BoatNumbers, share: number): number {
  const { foreSheer, aftSheer } = PROPORTIONS[boat.kind];
  const factor = share < 0.5 ? foreSheer + (1 - foreSheer) * (share / 0.5) : 1 + (aftSheer - 1) * ((share - 0.5) / 0.5);
  return boat.freeboardM * factor;
}

/** The deckhouse, lower than the air draught whatever the numbers say; none on a boat too low for one. */
export function deckhouseOf(boat: BoatNumbers): Boat['deckhouses'][number] | null {
  const { house } = PROPORTIONS[boat.kind];
  if (!house) return null;
  const heightM = Math.min(house.height * boat.loaM, house.mostM, 0.6 * (boat.airDraughtM - boat.freeboardM));
  if (heightM < 0.15) return null;
  const zTopM = toCm(deckZM(boat, 0.5) + heightM);
  return { xForeM: toCm(house.from * boat.loaM), xAftM: toCm(house.to * boat.loaM), zTopM, material: 'grp' };
}

/** Height of what one stands on at a share of the length: the deckhouse top where there is one, else the deck, m. */
export function topZM(boat: BoatNumbers, share: number): number {
  const house = deckhouseOf(boat);
  const xM = share * boat.loaM;
  return house && xM >= house.xForeM && xM <= house.xAftM ? house.zTopM : deckZM(boat, share);
}

/** Masts with height, spreaders and boom. The truck stands under the air draught by what whip and lights take. */
export function mastsOf(boat: BoatNumbers): Mast[] {
  const aloftM = Math.min(1, 0.08 * boat.airDraughtM);
  return mastPlan(boat).map((plan, index) => {
    const footZM = toCm(topZM(boat, plan.x));
    const truckZM = toCm(Math.max(footZM + 0.3, plan.height * (boat.airDraughtM - aloftM)));
    const heightM = truckZM - footZM;
    const boomLengthM = toCm(plan.boom * boat.loaM);
    return {
      id: `mast-${index + 1}`,
      name: plan.name,
      xM: toCm(plan.x * boat.loaM),
      footZM,
      truckZM,
      // About 12 mm of section for each metre of mast, not less than 60 mm.
      sectionMm: Math.max(60, Math.round(heightM * 1.2) * 10),
      material: 'aluminium',
      stepped: 'deck',
      spreaderZM: PROPORTIONS[boat.kind].sails ? spreaders(footZM, heightM) : [],
      boomZM: boomLengthM > 0 && heightM > 3 ? toCm(footZM + Math.min(1, 0.1 * heightM)) : null,
      boomLengthM: heightM > 3 ? boomLengthM : 0,
    };
  });
}

function mastPlan(boat: BoatNumbers): Proportions['masts'] {
  const { masts } = PROPORTIONS[boat.kind];
  if (boat.mastCount === masts.length) return masts;
  if (boat.mastCount < masts.length) return masts.slice(masts.length - boat.mastCount);
  return Array.from({ length: boat.mastCount }, (_, index) => ({
    x: 0.25 + (0.5 * (index + 0.5)) / boat.mastCount,
    height: 1,
    name: boat.mastCount === 1 ? 'Mast' : `Mast ${index + 1}`,
    boom: boat.mastCount === 1 ? 0.35 : 0.5 / boat.mastCount,
  }));
}

/** One, two or three pairs by the height of the mast, at the shares of it that are usual. */
function spreaders(footZM: number, heightM: number): number[] {
  const shares = heightM < 9 ? [0.52] : heightM < 17 ? [0.46, 0.73] : [0.32, 0.56, 0.78];
  return shares.map((share) => toCm(footZM + share * heightM));
}

/** Pulpit, pushpit, arch and wheelhouse, as the kind has them. */
export function fittingsOf(boat: BoatNumbers): Fitting[] {
  const { arch, wheelhouse, sails } = PROPORTIONS[boat.kind];
  const fittings: Fitting[] = [];
  const rail = Math.min(0.65, 0.06 * boat.loaM);
  if (boat.kind !== 'open-boat') fittings.push(fitting(boat, 'pulpit', 'Pulpit', 0.005, 0.09, deckZM(boat, 0), rail));
  const house = deckhouseOf(boat);
  if (wheelhouse && house) {
    const share = house.xForeM / boat.loaM;
    fittings.push(
      fitting(
        boat,
        'wheelhouse',
        'Wheelhouse',
        share,
        share + 0.22,
        Math.min(deckZM(boat, share), house.zTopM),
        0,
        house.zTopM,
      ),
    );
  }
  if (sails) fittings.push(fitting(boat, 'pushpit', 'Pushpit', 0.92, 0.995, deckZM(boat, 1), rail));
  if (arch) {
    const headroomM = Math.min(2.3, 0.6 * (boat.airDraughtM - boat.freeboardM));
    fittings.push(fitting(boat, 'arch', 'Arch', 0.9, 0.96, deckZM(boat, 0.93), headroomM));
  }
  return fittings;
}

function fitting(
  boat: BoatNumbers,
  kind: Fitting['kind'],
  name: string,
  from: number,
  to: number,
  zBaseM: number,
  heightM: number,
  zTopM: number = zBaseM + heightM,
): Fitting {
  const material = kind === 'wheelhouse' ? 'grp' : kind === 'arch' ? 'aluminium' : 'steel';
  const span = { xForeM: toCm(from * boat.loaM), xAftM: toCm(to * boat.loaM) };
  return { id: kind, name, kind, ...span, zBaseM: toCm(zBaseM), zTopM: toCm(zTopM), material };
}

/** The spaces below, with soles as deep as the body of the boat allows: about 5 per cent of the length below the water. */
export function compartmentsOf(boat: BoatNumbers): Compartment[] {
  const bodyM = Math.min(0.9 * boat.draughtM, 0.05 * boat.loaM);
  const space = (name: string, from: number, to: number, soleZM: number, side: Compartment['side'] = 'centre') => ({
    id: name.toLowerCase().replaceAll(' ', '-'),
    name,
    side,
    xForeM: toCm(from * boat.loaM),
    xAftM: toCm(to * boat.loaM),
    soleZM: toCm(soleZM),
  });
  const lazarette = space('Lazarette', 0.86, 0.98, 0.3 * deckZM(boat, 0.92));
  if (boat.kind === 'open-boat') return [space('Well', 0.15, 0.85, 0.1 * boat.freeboardM), lazarette];
  if (boat.kind === 'catamaran') {
    return [
      space('Port hull', 0.1, 0.86, -bodyM, 'port'),
      space('Starboard hull', 0.1, 0.86, -bodyM, 'starboard'),
      space('Saloon', 0.34, 0.7, 0.6 * boat.freeboardM),
      lazarette,
    ];
  }
  return [
    space('Forepeak', 0.04, 0.26, -0.4 * bodyM),
    space('Saloon', 0.26, 0.62, -0.8 * bodyM),
    space('Engine space', 0.62, 0.8, -0.7 * bodyM),
    lazarette,
  ];
}
