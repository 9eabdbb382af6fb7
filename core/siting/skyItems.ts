import { indexProject, overheadOf, placeOf } from '../catalogue/lookup.ts';
import type { Position } from '../model/boat.ts';
import type { Part } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { deckZM, type Eye, type Thing, upright } from './skyBodies.ts';

/** What stands about on deck, as upright rounds: breadth and height, m. Common practice, no source. */
const WHIP_M = 0.025;
const PATCH_M = 0.1;
const DOME = { breadthM: 0.6, heightM: 0.6 } as const;
const RADAR = { breadthM: 0.6, heightM: 0.35 } as const;
const TERMINAL = { breadthM: 0.5, heightM: 0.1 } as const;
/** A generator's pole and how far it stands above its own height. Common practice, no source. */
const GENERATOR = { breadthM: 0.06, heightM: 1.5 } as const;

/** The other antennas and gear in the open, and the pole that the item's own facts tell of. */
export function itemThings(project: Project, own: Item, eye: Eye): readonly Thing[] {
  const { effective } = indexProject(project);
  const others = project.items.filter(
    (item) => item.id !== own.id && item.status !== 'remove' && isOutside(project, item),
  );
  const generators = others.filter((item) => isGenerator(effective.get(item.id)));
  const told = toldPole(project, own, generators, eye);
  const rest = told.instead ? others.filter((item) => item !== told.instead) : others;
  return [...told.things, ...rest.flatMap((item) => standing(project, item, effective.get(item.id), eye))];
}

const isGenerator = (part: Part | undefined): boolean =>
  part?.kind === 'equipment' && part.equipmentClass === 'wind-generator';

function isOutside(project: Project, item: Item): boolean {
  if (overheadOf(project, item) !== 'open' || item.facts.outdoors === false) return false;
  return (placeOf(project, item)?.compartmentId ?? null) === null;
}

function standing(project: Project, item: Item, part: Part | undefined, eye: Eye): readonly Thing[] {
  const size = sizeOf(part);
  if (!size) return [];
  const foot = isGenerator(part) ? { ...item.position, zM: deckZM(project.boat, item.position.xM) } : item.position;
  const name = { key: item.id, label: item.tag, subject: { kind: 'item', id: item.id } } as const;
  const topZM = item.position.zM + size.heightM;
  const low = Math.min(size.breadthM, topZM - foot.zM);
  return upright(name, foot, topZM, size.breadthM, 'aluminium', eye).map((thing) =>
    // What is flatter than broad hides no more than a bar of its height would.
    low < size.breadthM ? { ...thing, lossDb: flatDb(thing, foot, topZM, low, eye) } : thing,
  );
}

function flatDb(thing: Thing, foot: Position, topZM: number, heightM: number, eye: Eye): number {
  const bar = upright(thing, foot, topZM, heightM, 'aluminium', eye);
  return Math.min(thing.lossDb, bar[0]?.lossDb ?? thing.lossDb);
}

function sizeOf(part: Part | undefined): { readonly breadthM: number; readonly heightM: number } | null {
  if (part?.kind === 'antenna') {
    if (part.antennaClass === 'hf-wire') return null;
    if (part.antennaClass === 'dome') return DOME;
    const isPatch = part.antennaClass === 'gnss' || part.antennaClass === 'l-band';
    return { breadthM: isPatch ? PATCH_M : WHIP_M, heightM: part.figures.lengthM.value };
  }
  if (part?.kind === 'radio' && part.radioClass === 'broadband-terminal') return TERMINAL;
  if (part?.kind !== 'equipment') return null;
  if (part.equipmentClass === 'radar') return RADAR;
  return part.equipmentClass === 'wind-generator' ? GENERATOR : null;
}

/**
 * A pole of which only diameter and distance were noted: towards the nearest wind generator, whose pole it then is; without
 * one its bearing is not known and it is taken astern, which its label says.
 */
function toldPole(
  project: Project,
  own: Item,
  generators: readonly Item[],
  eye: Eye,
): { readonly things: readonly Thing[]; readonly instead: Item | null } {
  const { shadowPoleDiameterM: breadthM, shadowPoleDistanceM: distanceM } = own.facts;
  if (breadthM === undefined || distanceM === undefined) return { things: [], instead: null };
  const gap = (item: Item): number => Math.hypot(item.position.xM - eye.at.xM, item.position.yM - eye.at.yM);
  const [nearest = null] = generators.filter((item) => gap(item) > 0).toSorted((a, b) => gap(a) - gap(b));
  const share = nearest ? distanceM / gap(nearest) : 0;
  const foot = {
    xM: eye.at.xM + (nearest ? (nearest.position.xM - eye.at.xM) * share : distanceM),
    yM: eye.at.yM + (nearest ? (nearest.position.yM - eye.at.yM) * share : 0),
    zM: deckZM(project.boat, own.position.xM),
  };
  const topZM = (nearest?.position.zM ?? eye.at.zM) + GENERATOR.heightM;
  const name = nearest
    ? ({ key: nearest.id, label: `${nearest.tag}: pole`, subject: { kind: 'item', id: nearest.id } } as const)
    : ({
        key: 'pole',
        label: 'Pole, its bearing not noted: taken astern',
        subject: { kind: 'item', id: own.id },
      } as const);
  return { things: upright(name, foot, topZM, breadthM, 'aluminium', eye), instead: nearest };
}
