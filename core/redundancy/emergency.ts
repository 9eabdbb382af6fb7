import { indexProject } from '../catalogue/lookup.ts';
import type { RfPort } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { stands } from './build.ts';

/** How an emergency VHF antenna stands to one set: whether its lead gets there and its plug goes in. */
export interface EmergencyFit {
  readonly verdict: 'fits' | 'too-short' | 'wrong-plug' | 'both' | 'unknown';
  readonly distanceM: number;
  readonly leadLengthM: number | null;
  readonly leadConnector: string | null;
  readonly socket: string;
}

const cache = new WeakMap<Project, readonly Item[]>();

/** Emergency VHF antennas kept aboard with a lead of their own, not wired into the installation. */
export function emergencyAntennas(project: Project): readonly Item[] {
  const known = cache.get(project);
  if (known) return known;
  const index = indexProject(project);
  const found = project.items.filter((item) => {
    const part = index.effective.get(item.id);
    const isEmergency = part?.kind === 'antenna' && part.antennaClass === 'vhf-emergency';
    return isEmergency && stands(item) && !(index.runsAtItem.get(item.id) ?? []).some(stands);
  });
  cache.set(project, found);
  return found;
}

/** Whether an emergency antenna's lead reaches a set in a straight line, the least it must do, and has its plug. */
export function emergencyFit(project: Project, antenna: Item, set: Item): EmergencyFit {
  const socket = vhfSocket(project, set)?.connector ?? 'uhf';
  const { leadLengthM = null, leadConnector = null } = antenna.facts;
  const a = antenna.position;
  const b = set.position;
  const distanceM = Math.hypot(a.xM - b.xM, a.yM - b.yM, a.zM - b.zM);
  const short = leadLengthM !== null && leadLengthM < distanceM;
  const wrong = leadConnector !== null && plugFamily(leadConnector) !== socket;
  const known = leadLengthM !== null && leadConnector !== null;
  const verdict = short && wrong ? 'both' : short ? 'too-short' : wrong ? 'wrong-plug' : known ? 'fits' : 'unknown';
  return { verdict, distanceM, leadLengthM, leadConnector, socket };
}

function vhfSocket(project: Project, set: Item): RfPort | undefined {
  const ports = indexProject(project).effective.get(set.id)?.ports ?? [];
  return ports.find((port): port is RfPort => port.medium === 'rf' && port.bands.includes('vhf-marine'));
}

/** The connector family of a plug as people write it: PL-259 and SO-239 are the two halves of a UHF connector. */
function plugFamily(name: string): string {
  const plain = name.toLowerCase().replace(/[^a-z0-9]/g, '');
  if (plain.startsWith('pl259') || plain.startsWith('so239') || plain.startsWith('uhf')) return 'uhf';
  return plain.replace(/(male|female|plug|socket)$/, '');
}
