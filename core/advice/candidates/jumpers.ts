import { distanceM } from '../../edit/geometry.ts';
import type { PathBudget } from '../../links/types.ts';
import type { Endpoint, Item } from '../../model/project.ts';
import { AIS_OFF, BOTH_SWITCHES, BY_HAND } from '../cautions.ts';
import { aisThrough, anySingle, fittedOf, pathsOf, runAt, type Survey, sendsAis, structuresOfPath } from '../survey.ts';
import type { Candidate } from '../types.ts';
import { addLead, switchAt } from './switches.ts';

/** Farthest two sets may be apart for a lead between their switches, m: beyond it is a feeder. Own rule, no source. */
const LONGEST_JUMPER_M = 4;

/**
 * A bypass kept for the day it is wanted, between two changeover switches: round a splitter, or from a voice set to the
 * antenna of another set on another structure.
 */
export function jumperCandidates(survey: Survey): readonly Candidate[] {
  return fittedOf(survey, 'radio').flatMap(({ item }) => {
    const [path, more] = pathsOf(survey, item.id).filter(({ service }) => service === 'vhf-voice');
    if (!path || more || !path.canTransmit) return [];
    return [...roundSplitter(survey, item, path), ...toOtherAntenna(survey, item, path)];
  });
}

/** Active devices only: a splitter that hangs on supply is what such a lead is carried for. */
function roundSplitter(survey: Survey, set: Item, path: PathBudget): readonly Candidate[] {
  const id = path.deviceIds.find((each) => {
    const part = survey.index.effective.get(each);
    return part?.kind === 'inline' && part.deviceClass === 'splitter-active';
  });
  const splitter = id === undefined ? undefined : survey.index.items.get(id);
  const part = splitter && survey.index.effective.get(splitter.id);
  if (!splitter || part?.kind !== 'inline' || !anySingle(survey, [`item:${splitter.id}`])) return [];
  const common = part.ports.find(
    (port) =>
      part.throughs.length > 0 &&
      part.throughs.every(({ fromPortId, toPortId }) => [fromPortId, toPortId].includes(port.id)),
  );
  if (!common) return [];
  const isAisLent = aisThrough(survey, splitter.id).some(sendsAis);
  return [
    {
      id: `jumper:${set.id}:${splitter.id}`,
      kind: 'jumper',
      question: `antenna:${set.id}`,
      title: `Fit a bypass round ${splitter.tag} for ${set.tag}: two changeover switches and a lead between them`,
      cautions: [BY_HAND, BOTH_SWITCHES, ...(isAisLent ? [AIS_OFF] : [])],
      subjects: [set, splitter].map((item) => ({ kind: 'item', id: item.id })),
      apply: jumper({ itemId: set.id, portId: path.portId }, { itemId: splitter.id, portId: common.id }),
    },
  ];
}

function toOtherAntenna(survey: Survey, set: Item, path: PathBudget): readonly Candidate[] {
  const own = structuresOfPath(survey, path);
  if (!anySingle(survey, [`item:${path.antennaId}`, ...own.map((id) => `structure:${id}`)])) return [];
  return fittedOf(survey, 'radio').flatMap(({ item, part }): Candidate[] => {
    const [other, more] = pathsOf(survey, item.id).filter(({ service }) => service === 'ais');
    if (!other || more || other.antennaId === path.antennaId) return [];
    if (other.deviceIds.some((id) => path.deviceIds.includes(id))) return [];
    if (distanceM(item.position, set.position) > LONGEST_JUMPER_M) return [];
    if (structuresOfPath(survey, other).some((id) => own.includes(id))) return [];
    const end = { itemId: item.id, portId: other.portId };
    if (!runAt(survey, end)) return [];
    const antenna = survey.index.items.get(other.antennaId)?.tag ?? other.antennaId;
    return [
      {
        id: `jumper:${set.id}:${item.id}`,
        kind: 'jumper',
        question: `antenna:${set.id}`,
        title: `Let ${set.tag} borrow ${antenna} from ${item.tag}: two changeover switches and a lead between them`,
        cautions: [BY_HAND, BOTH_SWITCHES, ...(sendsAis(part) ? [AIS_OFF] : [])],
        subjects: [set.id, item.id, other.antennaId].map((id) => ({ kind: 'item', id })),
        apply: jumper({ itemId: set.id, portId: path.portId }, end),
      },
    ];
  });
}

const jumper =
  (atSet: Endpoint, atOther: Endpoint): Candidate['apply'] =>
  (project) => {
    const first = switchAt(project, atSet);
    const second = switchAt(first.project, atOther, 'feeder');
    const from = { itemId: first.switchId, portId: 'b' };
    return addLead(second.project, from, { itemId: second.switchId, portId: 'b' });
  };
