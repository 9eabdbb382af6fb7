import { indexProject } from '../catalogue/lookup.ts';
import { budgetPaths } from '../links/budget.ts';
import type { PathBudget } from '../links/types.ts';
import type { RfPort } from '../model/part.ts';
import { type Item, type Project, runSchema } from '../model/project.ts';

/**
 * Where an emergency antenna is taken to be rigged: on a boathook or the pushpit, its foot so far above the deck aft, m. Own rule,
 * common practice, no source: as high as one can reach and tie it.
 */
export const RIGGED_ABOVE_DECK_M = 2;
/** Its lead, where none is recorded better: thin and flexible, as such sets are sold. Common practice, no source. */
const LEAD_CABLE_ID = 'coax-rg-58c-u';

/** A boat with the emergency antenna rigged and plugged into the set, and nothing else. */
export interface Rigged {
  readonly project: Project;
  readonly path: PathBudget;
}

const cache = new WeakMap<Project, Map<string, Rigged | null>>();

/**
 * An emergency VHF antenna as it would be used: rigged at the deck aft, on its own lead, at one set. Null where either has no
 * VHF socket.
 */
export function riggedEmergency(project: Project, antennaId: string, setId: string): Rigged | null {
  const known = cache.get(project) ?? new Map<string, Rigged | null>();
  cache.set(project, known);
  const key = `${setId}>${antennaId}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const rigged = rig(project, antennaId, setId);
  known.set(key, rigged);
  return rigged;
}

function rig(project: Project, antennaId: string, setId: string): Rigged | null {
  const { items } = indexProject(project);
  const [antenna, set] = [items.get(antennaId), items.get(setId)];
  const [antennaPort, setPort] = [vhfPort(project, antennaId), vhfPort(project, setId)];
  if (!antenna || !set || !antennaPort || !setPort) return null;
  const { loaM, freeboardAftM } = project.boat;
  const position = { xM: loaM, yM: 0, zM: freeboardAftM + RIGGED_ABOVE_DECK_M };
  const aloft: Item = { ...antenna, position, placeId: null };
  const lead = runSchema.parse({
    id: 'emergency-lead',
    number: 'lead',
    cableId: LEAD_CABLE_ID,
    from: { itemId: set.id, portId: setPort.id },
    to: { itemId: aloft.id, portId: antennaPort.id },
    measuredLengthM: antenna.facts.leadLengthM ?? null,
  });
  const rigged: Project = { ...project, items: [set, aloft], runs: [lead], feeds: [], dataLinks: [], measurements: [] };
  const path = budgetPaths(rigged).find((each) => each.service === 'vhf-voice');
  return path ? { project: rigged, path } : null;
}

function vhfPort(project: Project, itemId: string): RfPort | undefined {
  const ports = indexProject(project).effective.get(itemId)?.ports ?? [];
  return ports.find((port): port is RfPort => port.medium === 'rf' && port.bands.includes('vhf-marine'));
}
