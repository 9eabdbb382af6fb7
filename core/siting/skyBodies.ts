import type { Boat, Fitting, Mast, Material, Position } from '../model/boat.ts';
import type { Subject } from '../model/project.ts';
import { type Body, block, length, post, sail } from './skyGeometry.ts';
import { sailLossDb, shellLossDb, uprightLossDb } from './skyLoss.ts';
import type { RigState } from './types.ts';

/** Something in the way, before it is drawn on the sky. */
export interface Thing {
  readonly key: string;
  readonly label: string;
  readonly subject: Subject | null;
  readonly body: Body;
  readonly lossDb: number;
}

/** Where the antenna is and what it works on. */
export interface Eye {
  readonly at: Position;
  readonly frequencyMhz: number;
}

/** Diameter of a pole, m: as drawn. */
export const POLE_M = 0.07;
/** Tubes of an arch and posts of a hardtop, and how thick a roof or the top of an arch is, m. Common practice, no source. */
const TUBE_M = 0.06;
const ROOF_M = 0.12;
/** Half breadth of a house as a share of the beam: as drawn from above. */
const HOUSE_HALF_BEAM = 0.3;
/** Depth of a boom as a share of its length. Common practice, no source. */
const BOOM_DEPTH = 0.025;

/** Masts, booms, sails, fittings and houses as the antenna sees them. */
export function boatThings(boat: Boat, eye: Eye, rig: RigState): readonly Thing[] {
  return [
    ...boat.masts.flatMap((mast) => spars(boat, mast, eye, rig)),
    ...headsail(boat, eye, rig),
    ...boat.fittings.flatMap((fitting) => fittingThings(boat, fitting, eye)),
    ...boat.deckhouses.flatMap((house, index) => {
      const box = { xForeM: house.xForeM, xAftM: house.xAftM, zBaseM: deckZM(boat, house.xForeM), zTopM: house.zTopM };
      const name = {
        key: `deckhouse-${index + 1}`,
        label: 'Deckhouse',
        subject: { kind: 'boat', id: 'boat' },
      } as const;
      return shell(name, box, HOUSE_HALF_BEAM * boat.beamM, house.material, eye);
    }),
  ];
}

type Name = Pick<Thing, 'key' | 'label' | 'subject'>;
const structure = (id: string, label: string, key = id): Name => ({ key, label, subject: { kind: 'structure', id } });

const things = (name: Name, body: Body | null, lossDb: (body: Body) => number): readonly Thing[] =>
  body ? [{ ...name, body, lossDb: lossDb(body) }] : [];

/** Behind something slender the signal bends round; one of wood or plastic takes no more than it lets through as a wall. */
function slenderDb(breadthM: number, material: Material, eye: Eye): (body: Body) => number {
  return (body) =>
    Math.min(
      shellLossDb(material, eye.frequencyMhz),
      uprightLossDb(breadthM, length(body.towards) + breadthM / 2, eye.frequencyMhz),
    );
}

/** An upright tube. */
export function upright(
  name: Name,
  at: Position,
  topZM: number,
  breadthM: number,
  material: Material,
  eye: Eye,
): readonly Thing[] {
  return things(name, post(eye.at, at, topZM, breadthM / 2), slenderDb(breadthM, material, eye));
}

/** The mast, its boom, and the sail on the two. */
function spars(boat: Boat, mast: Mast, eye: Eye, rig: RigState): readonly Thing[] {
  const { xM, footZM, truckZM, sectionMm, material, boomZM, boomLengthM, id, name } = mast;
  const tube = upright(structure(id, name), { xM, yM: 0, zM: footZM }, truckZM, sectionMm / 1000, material, eye);
  if (boomZM === null || boomLengthM <= 0) return tube;
  const gooseneck = { xM, yM: 0, zM: boomZM };
  const half = (BOOM_DEPTH * boomLengthM) / 2;
  const swungDeg = rig.boomDeg;
  const spar = block(eye.at, {
    origin: gooseneck,
    swungDeg,
    from: [sectionMm / 2000, -half, -half],
    to: [boomLengthM, half, half],
  });
  const boom = things(structure(id, `${name}: boom`, `${id}:boom`), spar, slenderDb(2 * half, material, eye));
  if (rig.mainsail !== 'set' || !isSailing(boat)) return [...tube, ...boom];
  const angle = (swungDeg * Math.PI) / 180;
  const clew = { xM: xM + boomLengthM * Math.cos(angle), yM: -boomLengthM * Math.sin(angle), zM: boomZM };
  const cloth = sail(eye.at, [{ xM, yM: 0, zM: truckZM }, clew, gooseneck]);
  return [...tube, ...boom, ...cloths(structure(id, `${name}: sail`, `${id}:sail`), cloth, eye)];
}

const cloths = (name: Name, body: Body | null, eye: Eye): readonly Thing[] =>
  things(name, body, () => sailLossDb(eye.frequencyMhz));

/**
 * Head and tack of the headsail on the forestay as it is drawn: from just below the truck of the foremost mast to the stem, a
 * bowsprit's end or, on a catamaran, the forward beam. Null for a boat without one.
 */
export function forestay(boat: Boat): { readonly mast: Mast; readonly head: Position; readonly tack: Position } | null {
  const [mast] = boat.masts.toSorted((a, b) => a.xM - b.xM);
  if (!mast || !isSailing(boat)) return null;
  const head = { xM: mast.xM, yM: 0, zM: mast.truckZM - 0.012 * (mast.truckZM - mast.footZM) };
  const sprit = boat.fittings.find((fitting) => fitting.kind === 'bowsprit');
  const stemXM = (boat.kind === 'catamaran' ? 0.1 : 0.014) * boat.loaM;
  const tack = sprit
    ? { xM: sprit.xForeM + 0.08, yM: 0, zM: sprit.zTopM }
    : { xM: stemXM, yM: 0, zM: deckZM(boat, 0.014 * boat.loaM) };
  return { mast, head, tack };
}

/** Foot of a headsail: sheeted beside the mast, a third of the beam to leeward, a metre above the deck. Common practice, no source. */
function headsail(boat: Boat, eye: Eye, rig: RigState): readonly Thing[] {
  const stay = rig.headsail === 'set' ? forestay(boat) : null;
  if (!stay) return [];
  const { mast, head, tack } = stay;
  const lee = Math.sign(rig.boomDeg) || Math.sign(rig.heelDeg);
  const clew = { xM: mast.xM, yM: -lee * (boat.beamM / 3), zM: deckZM(boat, mast.xM) + 1 };
  return cloths(structure(mast.id, 'Headsail', 'headsail'), sail(eye.at, [head, tack, clew]), eye);
}

/** Boats that set sails; elsewhere a boom is a derrick. */
const isSailing = ({ kind }: Boat): boolean => kind !== 'motor-yacht' && kind !== 'trawler' && kind !== 'open-boat';

/** Height of the deck edge, m: a parabola through the three freeboards, as it is drawn. */
export function deckZM({ freeboardForeM, freeboardMidM, freeboardAftM, loaM }: Boat, xM: number): number {
  const t = Math.min(1.2, Math.max(-0.2, xM / loaM));
  return freeboardForeM * (2 * t - 1) * (t - 1) + freeboardMidM * 4 * t * (1 - t) + freeboardAftM * t * (2 * t - 1);
}

type Span = Pick<Fitting, 'xForeM' | 'xAftM' | 'zBaseM' | 'zTopM'>;

/** A block across the boat, as wide as said to either side. */
function across(eye: Eye, { xForeM, xAftM, zBaseM, zTopM }: Span, halfM: number): Body | null {
  const origin = { xM: xForeM, yM: 0, zM: zBaseM };
  return block(eye.at, { origin, swungDeg: 0, from: [0, -halfM, 0], to: [xAftM - xForeM, halfM, zTopM - zBaseM] });
}

function shell(name: Name, span: Span, halfM: number, material: Material, eye: Eye): readonly Thing[] {
  return things(name, across(eye, span, halfM), () => shellLossDb(material, eye.frequencyMhz));
}

/** Rails and a bowsprit are too thin and too low to count. */
function fittingThings(boat: Boat, fitting: Fitting, eye: Eye): readonly Thing[] {
  const { id, name, material, xForeM, xAftM, zBaseM, zTopM } = fitting;
  switch (fitting.kind) {
    case 'radar-pole':
    case 'pole':
      return upright(
        structure(id, name),
        { xM: (xForeM + xAftM) / 2, yM: 0, zM: zBaseM },
        zTopM,
        POLE_M,
        material,
        eye,
      );
    case 'arch':
    case 'hardtop':
      return onPosts(boat, fitting, eye);
    case 'wheelhouse':
    case 'flybridge':
      return shell(structure(id, name), fitting, HOUSE_HALF_BEAM * boat.beamM, material, eye);
    default:
      return [];
  }
}

/** A flat top on four tubes: a hardtop, as broad as a house, keeps the sky off as a wall does; an arch spans the beam and its bar is a spar. */
function onPosts(boat: Boat, fitting: Fitting, eye: Eye): readonly Thing[] {
  const { id, name, material, xForeM, xAftM, zBaseM, zTopM } = fitting;
  const isRoof = fitting.kind === 'hardtop';
  const half = (isRoof ? HOUSE_HALF_BEAM : 0.5) * boat.beamM;
  const top = across(eye, { ...fitting, zBaseM: Math.max(zBaseM, zTopM - ROOF_M) }, half);
  const topDb = isRoof ? () => shellLossDb(material, eye.frequencyMhz) : slenderDb(ROOF_M, material, eye);
  const corners = [xForeM, xAftM].flatMap((xM) => [half, -half].map((yM) => ({ xM, yM, zM: zBaseM })));
  const posts = corners.flatMap((foot, index) =>
    upright(structure(id, `${name}: post`, `${id}:post-${index + 1}`), foot, zTopM - ROOF_M, TUBE_M, material, eye),
  );
  return [...things(structure(id, name), top, topDb), ...posts];
}
