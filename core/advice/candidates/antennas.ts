import { removeFromRun } from '../../edit/inline.ts';
import { addItem } from '../../edit/items.ts';
import { removeSubjects } from '../../edit/remove.ts';
import type { PathBudget } from '../../links/types.ts';
import type { Place } from '../../model/boat.ts';
import type { Item, Project } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { findStructure } from '../../redundancy/components.ts';
import { BY_HAND, BY_RIGGER, CLEAR_OF_PEOPLE, NEW_FEEDER } from '../cautions.ts';
import { newest } from '../ends.ts';
import { layFeeder } from '../feeder.ts';
import { antennaPlace } from '../spots.ts';
import {
  aisThrough,
  anySingle,
  fittedOf,
  pathsOf,
  placeWords,
  runAt,
  type Survey,
  structuresOfPath,
} from '../survey.ts';
import type { Candidate } from '../types.ts';
import { switchAt } from './switches.ts';

/**
 * An antenna for a VHF or AIS set on another structure: its own in place of a shared one, with the splitter taken out where
 * it then serves one set only; or a second one behind a changeover switch.
 */
export function antennaCandidates(survey: Survey): readonly Candidate[] {
  return fittedOf(survey, 'radio').flatMap(({ item }) => {
    const paths = pathsOf(survey, item.id).filter(({ service }) => service === 'vhf-voice' || service === 'ais');
    const [path, more] = paths;
    if (!path || more || !isThreatened(survey, path)) return [];
    const place = antennaPlace(survey, structuresOfPath(survey, path));
    if (!place) return [];
    const splitter = sharedSplitter(survey, path);
    // Voice keeps the antenna there is, which is mostly the highest: of the two the AIS set is the one to leave a splitter.
    if (splitter && path.service === 'vhf-voice' && aisThrough(survey, splitter.id).length > 0) return [];
    const made = { survey, set: item, path, place };
    return splitter ? [ownAntenna(made, splitter)] : [secondAntenna(made)].filter((each) => each !== null);
  });
}

interface Made {
  readonly survey: Survey;
  readonly set: Item;
  readonly path: PathBudget;
  readonly place: Place;
}

function isThreatened(survey: Survey, path: PathBudget): boolean {
  const ids = [
    `item:${path.antennaId}`,
    ...path.runIds.map((id) => `run:${id}`),
    ...path.deviceIds.map((id) => `item:${id}`),
    ...structuresOfPath(survey, path).map((id) => `structure:${id}`),
  ];
  return anySingle(survey, ids);
}

/** The splitter or diplexer on the way that other runs go out of as well. */
function sharedSplitter(survey: Survey, path: PathBudget): Item | null {
  for (const id of path.deviceIds) {
    const part = survey.index.effective.get(id);
    const divides =
      part?.kind === 'inline' && ['splitter-active', 'splitter-passive', 'diplexer'].includes(part.deviceClass);
    const runs = (survey.index.runsAtItem.get(id) ?? []).filter(stands);
    if (divides && runs.length > 2) return survey.index.items.get(id) ?? null;
  }
  return null;
}

const AIS_WHIP = 'antenna-ais-whip-3db';
const VHF_WHIP = 'antenna-vhf-whip-3db';
const whipFor = ({ service }: PathBudget): string => (service === 'ais' ? AIS_WHIP : VHF_WHIP);

function ownAntenna({ survey, set, path, place }: Made, splitter: Item): Candidate {
  const end = { itemId: set.id, portId: path.portId };
  const old = runAt(survey, end)?.run;
  const isLast = (survey.index.runsAtItem.get(splitter.id) ?? []).filter(stands).length === 3;
  const apply = (project: Project): Project => {
    const bare = old ? removeSubjects(project, [{ kind: 'run', id: old.id }]) : project;
    const plain = isLast ? removeFromRun(bare, splitter.id) : bare;
    const fitted = addItem(plain, { partId: whipFor(path), placeId: place.id });
    const from = { itemId: newest(fitted).id, portId: 'feed' };
    return layFeeder(fitted, { from, to: end, structureId: place.structureId, frequencyMhz: path.frequencyMhz });
  };
  const out = isLast ? `, and take ${splitter.tag} out` : `, off ${splitter.tag}`;
  return {
    id: `own-antenna:${set.id}`,
    kind: 'own-antenna',
    question: `antenna:${set.id}`,
    title: `Give ${set.tag} an antenna of its own at ${placeWords(place.name)}${out}`,
    cautions: [...aloft(survey, place), NEW_FEEDER, ...(path.canTransmit ? [CLEAR_OF_PEOPLE] : [])],
    subjects: [set, splitter].map(({ id }) => ({ kind: 'item', id })),
    apply,
  };
}

function secondAntenna({ survey, set, path, place }: Made): Candidate | null {
  const end = { itemId: set.id, portId: path.portId };
  if (!runAt(survey, end)) return null;
  const apply = (project: Project): Project => {
    const { project: switched, switchId } = switchAt(project, end);
    const fitted = addItem(switched, { partId: whipFor(path), placeId: place.id });
    const from = { itemId: newest(fitted).id, portId: 'feed' };
    const to = { itemId: switchId, portId: 'b' };
    return layFeeder(fitted, { from, to, structureId: place.structureId, frequencyMhz: path.frequencyMhz });
  };
  return {
    id: `second-antenna:${set.id}`,
    kind: 'second-antenna',
    question: `antenna:${set.id}`,
    title: `Give ${set.tag} a second antenna at ${placeWords(place.name)}, behind a changeover switch`,
    cautions: [...aloft(survey, place), NEW_FEEDER, BY_HAND, ...(path.canTransmit ? [CLEAR_OF_PEOPLE] : [])],
    subjects: [set.id, path.antennaId].map((id) => ({ kind: 'item', id })),
    apply,
  };
}

function aloft(survey: Survey, place: Place): readonly string[] {
  const structure = place.structureId === null ? undefined : findStructure(survey.project, place.structureId);
  return structure && 'truckZM' in structure ? [BY_RIGGER] : [];
}
