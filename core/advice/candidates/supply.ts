import { indexProject } from '../../catalogue/lookup.ts';
import { addFeed } from '../../edit/feeds.ts';
import { wayAlongM } from '../../edit/geometry.ts';
import { addItem } from '../../edit/items.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import { removeSubjects } from '../../edit/remove.ts';
import type { Item, Project } from '../../model/project.ts';
import { BY_ELECTRICIAN, NEVER_PARALLEL, SMALL_BATTERY, STARTER, TWO_LEADS } from '../cautions.ts';
import { dcEnd } from '../ends.ts';
import { dryPlace } from '../spots.ts';
import {
  chainIds,
  endangers,
  feedsOf,
  fittedOf,
  isBattery,
  placeWords,
  poweredOnWay,
  type SupplyChain,
  type Survey,
  supplyChain,
  tagsOf,
} from '../survey.ts';
import type { Candidate } from '../types.ts';
import { sameVoltage, wireFor } from '../wires.ts';

/** The small battery that is put high and dry for a set. */
const SMALL_BATTERY_ID = 'bank-small-20ah';
/** Other batteries tried for one set: the nearest ones. */
const MOST_BATTERIES = 2;

/** A set with all that must have supply for it to work, and what that supply hangs on. */
interface Fed {
  readonly set: Item;
  /** The set, and devices on its way that fail it without supply. */
  readonly loads: readonly Item[];
  readonly chain: SupplyChain;
}

/**
 * Another supply for a set whose supply is a single point: from another battery, from the same one past what it shares with
 * others, from a small battery above the flood line, or from such a battery alone.
 */
export function supplyCandidates(survey: Survey): readonly Candidate[] {
  const sets = [...fittedOf(survey, 'radio'), ...fittedOf(survey, 'position-source')];
  return sets.flatMap(({ item }) => {
    const fed = fedSet(survey, item);
    if (!fed || !isThreatened(survey, fed)) return [];
    return [...fromBatteries(survey, fed), ...pastBreaker(survey, fed), ...fromSmallBattery(survey, fed)];
  });
}

function fedSet(survey: Survey, set: Item): Fed | null {
  if (feedsOf(survey, set.id).length === 0) return null;
  const loads = [set, ...poweredOnWay(survey, set.id)];
  return {
    set,
    loads,
    chain: supplyChain(
      survey,
      loads.map(({ id }) => id),
    ),
  };
}

/**
 * Whether a service the set gives is lost by its supply alone: by something in the chain, or by an event that takes the chain
 * and leaves the set, as a flood does.
 */
function isThreatened(survey: Survey, { set, chain }: Fed): boolean {
  const ids = new Set(chainIds(chain));
  const ownId = `item:${set.id}`;
  const causes = survey.study.model.causes.filter(
    ({ hits }) => !hits.includes(ownId) && hits.some((hit) => ids.has(hit)),
  );
  return endangers(survey, set.id, [...ids, ...causes.map(({ id }) => id)]);
}

const withDevices = ({ set, loads }: Fed): string => (loads.length > 1 ? tagsOf(loads) : set.tag);

function fromBatteries(survey: Survey, fed: Fed): readonly Candidate[] {
  const known = new Set(fed.chain.items.map(({ id }) => id));
  return fittedOf(survey, 'power')
    .filter(({ item, part }) => isBattery(part) && !known.has(item.id))
    .filter(({ item }) => fed.loads.every((load) => sameVoltage(survey.project, item, load)))
    .toSorted((a, b) => wayAlongM(a.item.position, fed.set.position) - wayAlongM(b.item.position, fed.set.position))
    .slice(0, MOST_BATTERIES)
    .map(({ item, part }): Candidate => {
      const isStarter = part.powerClass === 'starter-battery';
      return {
        ...secondSupply(fed, item),
        title: `Feed ${withDevices(fed)} from ${item.tag} as well${pastWords(survey, fed)}`,
        cautions: [BY_ELECTRICIAN, NEVER_PARALLEL, ...(isStarter ? [STARTER] : [])],
      };
    });
}

/** A second lead from the same battery, round the breaker or panel that many share. */
function pastBreaker(survey: Survey, fed: Fed): readonly Candidate[] {
  const batteries = fed.chain.items.filter(({ id }) => isBattery(survey.index.effective.get(id)));
  const [battery, more] = batteries;
  if (!battery || more || pastWords(survey, fed) === '') return [];
  if (!fed.loads.every((load) => sameVoltage(survey.project, battery, load))) return [];
  return [
    {
      ...secondSupply(fed, battery),
      title: `Feed ${withDevices(fed)} from ${battery.tag} by a second lead${pastWords(survey, fed)}`,
      cautions: [BY_ELECTRICIAN, TWO_LEADS],
    },
  ];
}

function secondSupply(fed: Fed, battery: Item): Omit<Candidate, 'title' | 'cautions'> {
  return {
    id: `second-feed:${fed.set.id}:${battery.id}`,
    kind: 'second-feed',
    question: `supply:${fed.set.id}`,
    subjects: [...fed.loads, battery].map(({ id }) => ({ kind: 'item', id })),
    apply: (project) => fed.loads.reduce((current, load) => withFeed(current, battery.id, load), project),
  };
}

/** `, past breaker B7`: what the new lead does not go through. */
function pastWords(survey: Survey, { chain }: Fed): string {
  const shared = chain.items.filter(({ id }) => {
    const part = survey.index.effective.get(id);
    return part?.kind === 'power' && ['breaker', 'panel', 'fuse-holder'].includes(part.powerClass);
  });
  const [first] = shared;
  if (!first) return '';
  const part = survey.index.effective.get(first.id);
  const word =
    shared.length === 1 && part?.kind === 'power' && part.powerClass !== 'fuse-holder' ? `${part.powerClass} ` : '';
  return `, past ${word}${tagsOf(shared)}`;
}

function fromSmallBattery(survey: Survey, fed: Fed): readonly Candidate[] {
  const part = survey.index.parts.get(SMALL_BATTERY_ID);
  const batteries = fed.chain.items.filter(({ id }) => isBattery(survey.index.effective.get(id)));
  const place = dryPlace(
    survey,
    fed.set.position,
    batteries.map(({ position }) => position),
  );
  if (!place || part?.kind !== 'power') return [];
  if (!fed.loads.every((load) => sameVoltage(survey.project, part, load))) return [];
  const common = {
    question: `supply:${fed.set.id}`,
    subjects: fed.loads.map(({ id }) => ({ kind: 'item' as const, id })),
  };
  const where = `${placeWords(place.name)}, above the flood line`;
  const apply = (project: Project): Project => {
    const fitted = addItem(project, { partId: SMALL_BATTERY_ID, placeId: place.id });
    const batteryId = fitted.items.at(-1)?.id ?? '';
    return fed.loads.reduce((current, load) => withFeed(current, batteryId, load), fitted);
  };
  return [
    {
      ...common,
      id: `high-battery:${fed.set.id}`,
      kind: 'high-battery',
      title: `Feed ${withDevices(fed)} from a small battery at ${where}, as well`,
      cautions: [BY_ELECTRICIAN, NEVER_PARALLEL, SMALL_BATTERY],
      apply,
    },
    {
      ...common,
      id: `own-battery:${fed.set.id}`,
      kind: 'own-battery',
      title: `Put ${withDevices(fed)} on a small battery of ${fed.loads.length > 1 ? 'their' : 'its'} own at ${where}, in place of the supply now`,
      cautions: [BY_ELECTRICIAN, SMALL_BATTERY],
      apply: (project) =>
        apply(
          removeSubjects(
            project,
            fed.loads.flatMap((load) => feedsOf(survey, load.id).map(({ id }) => ({ kind: 'feed' as const, id }))),
          ),
        ),
    },
  ];
}

/** The project with a fused feed from a battery to a load. @throws RefusedEdit where it cannot be drawn */
function withFeed(project: Project, batteryId: string, load: Item): Project {
  const battery = project.items.find(({ id }) => id === batteryId);
  const [from, to] = [dcEnd(project, batteryId, 'out'), dcEnd(project, load.id, 'in')];
  if (!battery || !from || !to) throw new RefusedEdit(`${load.tag} has no terminal for another supply.`);
  const lengthM = wayAlongM(battery.position, load.position);
  const part = indexProject(project).effective.get(batteryId);
  const supplyV = part?.kind === 'power' ? part.figures.voltageV.value : 0;
  const wire = wireFor(project, load, lengthM, supplyV);
  // Without a fuse that fits it is not offered: an unfused lead is worse than the single point it is to cure.
  if (!wire) throw new RefusedEdit(`No listed fuse and pair carries ${load.tag} over ${lengthM} m.`);
  return addFeed(project, { from, to, ...wire });
}
