import type { Subject } from '../model/project.ts';
import { type Grade, SERVICES, type ServiceId } from '../model/services.ts';
import type { Component, FailureStudy, Redundancy, Way } from '../redundancy/types.ts';

const KIND_WORDS: Readonly<Record<Component['kind'], string>> = {
  radio: 'set',
  antenna: 'antenna',
  cable: 'cable',
  joint: 'joint',
  device: 'device',
  structure: '',
  feed: '',
  breaker: 'breaker, panel or fuse',
  bank: 'battery',
  'power-device': 'power device',
  'position-source': 'position source',
  'data-link': 'data link',
  equipment: 'equipment',
  standalone: 'stand-alone set',
};

/** Names of everything in a boat's trees, taken from the project's tags. */
export interface Wording {
  /** An event: `W31, cable`. */
  readonly event: (id: string) => string;
  /** A gate as a sentence: `VHF-1 has no supply`. */
  readonly gate: (id: string) => string;
  /** All that a gate with alternatives asks for, where something else takes the gate as well: `Both ways are gone`. */
  readonly allGone: (id: string, count: number) => string;
  readonly subjects: (id: string) => readonly Subject[];
  readonly wayOf: (gateId: string) => Way | undefined;
}

/** Wording for one boat. No id of the document shows in it: what has no name is named by what it is. */
export function wordingOf(study: FailureStudy, redundancy: Redundancy): Wording {
  const components = new Map(redundancy.components.map((each) => [each.id, each]));
  const ways = new Map(redundancy.ways.map((way) => [`way:${way.id}`, way]));
  const byPath = new Map(redundancy.ways.flatMap((way) => (way.pathId === null ? [] : [[way.pathId, way] as const])));
  const name = (key: string, otherwise: string): string =>
    components.get(key)?.label ?? study.labels.get(key)?.label ?? otherwise;
  const event = (id: string): string => {
    const kind = components.get(id)?.kind;
    const words = kind ? KIND_WORDS[kind] : '';
    return `${name(id, 'Something unnamed')}${words === '' ? '' : `, ${words}`}`;
  };
  const names: Names = { name, way: (id) => ways.get(id), pathWay: (id) => byPath.get(id) };
  return {
    event,
    gate: (id) => gateWords(id, names) ?? `${event(id)}, is down`,
    allGone,
    subjects: (id) => subjectsOf(id, study, names),
    wayOf: names.way,
  };
}

interface Names {
  readonly name: (key: string, otherwise: string) => string;
  readonly way: (gateId: string) => Way | undefined;
  readonly pathWay: (pathId: string) => Way | undefined;
}

/** `supply:n1<vhf-1` is the supply of n1 seen from vhf-1: kind and id of a gate, without where it is seen from. */
export function readGateId(id: string): { readonly kind: string; readonly id: string } {
  const colon = id.indexOf(':');
  const kind = id.slice(0, colon);
  const rest = id.slice(colon + 1);
  // Ids of ways and paths may hold the sign themselves.
  return { kind, id: kind === 'way' || kind === 'path' ? rest : (rest.split('<')[0] ?? rest) };
}

function gateWords(gateId: string, { name, way, pathWay }: Names): string | undefined {
  const { kind, id } = readGateId(gateId);
  const tag = name(`item:${id}`, 'A part');
  switch (kind) {
    case 'service':
      return `${SERVICES.find((each) => each.id === id)?.name ?? 'The service'}, lost`;
    case 'way':
      return wayWords(way(gateId)?.label ?? 'A way');
    case 'path':
      return pathWords(pathWay(id), name);
    case 'supply':
      return `${tag} has no supply`;
    case 'source':
      return `${tag} gives nothing`;
    case 'feed-chain':
      return `${name(`feed:${id}`, 'A feed')} gives nothing`;
    case 'position':
      return `${tag} is fed no position`;
    case 'own-fix':
      return ownFixWords(id, name);
    case 'bus-position':
      return `Nothing puts a position on ${tag}`;
    case 'link-position':
      return `No position comes over ${name(`link:${id}`, 'a data link')}`;
    default:
      return undefined;
  }
}

/** `SAT-1 on A3, on its own battery, is gone`. */
const wayWords = (label: string): string => `${label}${label.includes(',') ? ',' : ''} is gone`;

function pathWords(way: Way | undefined, name: Names['name']): string {
  const antenna = way?.subjects.at(-1);
  const set = name(`item:${way?.itemId}`, 'The set');
  return antenna ? `${set} cannot reach ${name(`item:${antenna.id}`, 'its antenna')}` : `${set} has no antenna`;
}

/** `own-fix:x/0` is the first of several antennas of the receiver in x. */
function ownFixWords(id: string, name: Names['name']): string {
  const whole = name(`item:${id}`, '');
  if (whole !== '') return `${whole} gets no fix of its own`;
  const [, itemId = '', index = '0'] = /^(.*)\/(\d+)$/.exec(id) ?? [];
  return `${name(`item:${itemId}`, 'The receiver')} gets nothing from GNSS antenna ${Number(index) + 1}`;
}

function subjectsOf(id: string, study: FailureStudy, { way, pathWay }: Names): readonly Subject[] {
  const subject = study.labels.get(id)?.subject;
  if (subject) return [subject];
  const { kind, id: ownId } = readGateId(id);
  if (kind === 'way') return way(id)?.subjects ?? [];
  if (kind === 'path') return pathWay(ownId)?.subjects.slice(1) ?? [];
  const key = SUBJECT_OF_GATE[kind];
  const found = key === undefined ? null : study.labels.get(`${key}:${ownId.replace(/\/\d+$/, '')}`)?.subject;
  return found ? [found] : [];
}

const SUBJECT_OF_GATE: Readonly<Record<string, Subject['kind']>> = {
  supply: 'item',
  source: 'item',
  position: 'item',
  'own-fix': 'item',
  'bus-position': 'item',
  'feed-chain': 'feed',
  'link-position': 'link',
};

function allGone(gateId: string, count: number): string {
  const { kind } = readGateId(gateId);
  const all = count === 2 ? 'Both' : `All ${count}`;
  if (kind === 'service') return `${all} ways are gone`;
  if (kind === 'supply') return `${all} feeds give nothing`;
  return `${all} sources of position are gone`;
}

/** Name of a service. */
export const serviceName = (id: ServiceId): string => SERVICES.find((each) => each.id === id)?.name ?? 'The service';

/**
 * What a failure does to the service of a tree, as the end of a sentence. Sets carried on deck are not in the tree, so that the
 * top may be down while the matrix still counts one of them.
 * @param grade of the service in that row of the matrix
 */
export function outcomeWords(isTopDown: boolean, grade: Grade | undefined): string {
  if (!isTopDown) return 'this service lives on';
  return grade === 'lost' || grade === undefined
    ? 'it takes this service away'
    : 'it takes all fitted ways; what is left is a set carried by hand';
}
