import { indexProject } from '../catalogue/lookup.ts';
import type { Part } from '../model/part.ts';
import type { Endpoint, Project } from '../model/project.ts';

/** A line that joins two ports: a run or feed of the project, or one about to be made. */
interface Edge {
  readonly number: string;
  readonly from: Endpoint;
  readonly to: Endpoint;
}

interface Hop {
  readonly number: string;
  /** Node the hop leads to, and the item it belongs to. */
  readonly node: string;
  readonly itemId: string;
}

/**
 * A closed loop of coax, named as `SP-1 – W03 – SP-2 – W04 – SP-1`, or null. A signal goes on through an inline device
 * between ports its ways join (for a switch: the selected way only), and nowhere else: two runs from one radio to the two
 * leads of one antenna are no loop.
 * @param extra a run about to be made
 */
export function findRunLoop(
  project: Project,
  extra?: { readonly from: Endpoint; readonly to: Endpoint },
): string | null {
  const nodeOf = signalNodes(project);
  const hops = new Map<string, Hop[]>();
  const parent = new Map<string, string>();
  const edges: readonly Edge[] = extra ? [...project.runs, { ...extra, number: 'the new run' }] : project.runs;
  for (const edge of edges) {
    const [a, b] = [nodeOf(edge.from), nodeOf(edge.to)];
    const [rootA, rootB] = [rootOf(parent, a), rootOf(parent, b)];
    if (rootA === rootB) return namedLoop(project, edge, pathBetween(hops, b, a), ' – ');
    parent.set(rootA, rootB);
    addHop(hops, a, { number: edge.number, node: b, itemId: edge.to.itemId });
    addHop(hops, b, { number: edge.number, node: a, itemId: edge.from.itemId });
  }
  return null;
}

/**
 * A closed loop of DC feeds, named as `P1 → F02 → CH-1 → F03 → P1`, or null. Feeds have a direction, so that two feeds
 * into one load are no loop.
 * @param extra a feed about to be made
 */
export function findFeedLoop(
  project: Project,
  extra?: { readonly from: Endpoint; readonly to: Endpoint },
): string | null {
  const edges: readonly Edge[] = extra ? [...project.feeds, { ...extra, number: 'the new feed' }] : project.feeds;
  const hops = new Map<string, Hop[]>();
  for (const edge of edges) {
    // The feed that closes the loop comes last, so a way back from its load to its source is all there is to look for.
    const back = pathBetween(hops, edge.to.itemId, edge.from.itemId);
    if (edge.from.itemId === edge.to.itemId || back.length > 0) return namedLoop(project, edge, back, ' → ');
    addHop(hops, edge.from.itemId, { number: edge.number, node: edge.to.itemId, itemId: edge.to.itemId });
  }
  return null;
}

/** Ports that a device joins are one node; every other port is a node of its own. */
function signalNodes(project: Project): (end: Endpoint) => string {
  const parts = indexProject(project).effective;
  const groups = new Map<string, string>();
  return (end) => {
    const key = portKey(end.itemId, end.portId);
    const known = groups.get(key);
    if (known !== undefined) return known;
    const part = parts.get(end.itemId);
    if (part?.kind !== 'inline') return key;
    const parent = new Map<string, string>();
    for (const way of liveWays(part)) parent.set(rootOf(parent, way.fromPortId), rootOf(parent, way.toPortId));
    for (const port of part.ports) {
      groups.set(portKey(end.itemId, port.id), portKey(end.itemId, rootOf(parent, port.id)));
    }
    return groups.get(key) ?? key;
  };
}

function liveWays(part: Extract<Part, { kind: 'inline' }>) {
  const { position } = part.traits;
  const selected = part.deviceClass === 'switch' && position !== null ? part.throughs[position - 1] : undefined;
  return selected ? [selected] : part.throughs;
}

const portKey = (itemId: string, portId: string): string => JSON.stringify([itemId, portId]);

function rootOf(parent: Map<string, string>, key: string): string {
  let root = key;
  for (let up = parent.get(root); up !== undefined && up !== root; up = parent.get(root)) root = up;
  if (root !== key) parent.set(key, root);
  return root;
}

function addHop(hops: Map<string, Hop[]>, node: string, hop: Hop): void {
  const known = hops.get(node);
  if (known) known.push(hop);
  else hops.set(node, [hop]);
}

/** Shortest way between two nodes, breadth first; empty when there is none or they are the same. */
function pathBetween(hops: ReadonlyMap<string, readonly Hop[]>, start: string, goal: string): Hop[] {
  const cameBy = new Map<string, { hop: Hop; before: string }>();
  const queue = [start];
  for (let node = queue.shift(); node !== undefined && node !== goal; node = queue.shift()) {
    for (const hop of hops.get(node) ?? []) {
      if (hop.node === start || cameBy.has(hop.node)) continue;
      cameBy.set(hop.node, { hop, before: node });
      queue.push(hop.node);
    }
  }
  const path: Hop[] = [];
  for (let step = cameBy.get(goal); step; step = cameBy.get(step.before)) path.unshift(step.hop);
  return path;
}

function namedLoop(project: Project, closing: Edge, back: readonly Hop[], arrow: string): string {
  const { items } = indexProject(project);
  const tag = (itemId: string) => items.get(itemId)?.tag ?? itemId;
  const names = [tag(closing.from.itemId), closing.number, tag(closing.to.itemId)];
  for (const hop of back) names.push(hop.number, tag(hop.itemId));
  return names.join(arrow);
}
