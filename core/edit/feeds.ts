import { portOf } from '../catalogue/lookup.ts';
import { nextId } from '../model/ids.ts';
import { type DataLink, dataLinkSchema, type Endpoint, type Feed, feedSchema, type Project } from '../model/project.ts';
import { defaultConductorId, requireKind } from './cables.ts';
import { type Change, changed, entryOf, withEntry, withNewEntry } from './change.ts';
import { requireConnectable } from './connect.ts';
import { wayAlongM } from './geometry.ts';
import { RefusedEdit, requireValid } from './refused.ts';
import { requireFreeNumber } from './runs.ts';
import { numberMaker } from './tags.ts';

export interface AddFeed {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly conductorId?: string;
  /** One way, m; the way along, across and up the boat when left out. */
  readonly lengthM?: number;
  readonly fuse?: Feed['fuse'];
}

/**
 * Draws a DC feed from a source to a load (drawn the other way round, it is turned).
 * @throws RefusedEdit with the reason of `canConnect`
 */
export function addFeed(project: Project, args: AddFeed): Project {
  requireConnectable(project, args.from, args.to);
  const port = portOf(project, args.from);
  if (port?.medium !== 'dc')
    throw new RefusedEdit('A DC feed joins supply terminals: draw a cable run or a data link here.');
  if (args.conductorId !== undefined) requireKind(project, args.conductorId, 'conductor');
  const isBackwards = port.role === 'in';
  const feed: Feed = {
    id: nextId(project, 'feed'),
    number: numberMaker(project, 'F')(),
    from: isBackwards ? args.to : args.from,
    to: isBackwards ? args.from : args.to,
    conductorId: args.conductorId ?? defaultConductorId(project),
    lengthM: args.lengthM ?? wayBetweenM(project, args.from, args.to),
    fuse: args.fuse ?? null,
    status: 'new',
    notes: '',
  };
  requireValid(feedSchema, feed, feed.number);
  return withNewEntry(project, 'feeds', feed);
}

export type FeedChange = Omit<Change<Feed>, 'id' | 'from' | 'to'>;

/** Changes a feed: conductor, length, fuse, number, status, notes. @throws RefusedEdit as `setRun` */
export function setFeed(project: Project, feedId: string, change: FeedChange): Project {
  const feed = entryOf(project, 'feeds', feedId);
  if (change.number !== undefined) requireFreeNumber(project.feeds, feed, change.number);
  if (change.conductorId !== undefined) requireKind(project, change.conductorId, 'conductor');
  return withEntry(project, 'feeds', changed(feed, change, feedSchema, feed.number));
}

export interface AddDataLink {
  readonly from: Endpoint;
  readonly to: Endpoint;
  /** `['position']` when left out. */
  readonly carries?: DataLink['carries'];
  /** `nmea-0183` when left out. */
  readonly standard?: DataLink['standard'];
}

/** Draws a data link between two data ports. @throws RefusedEdit with the reason of `canConnect` */
export function addDataLink(project: Project, { from, to, carries, standard }: AddDataLink): Project {
  requireConnectable(project, from, to);
  if (portOf(project, from)?.medium !== 'data') {
    throw new RefusedEdit('A data link joins data ports: draw a cable run or a DC feed here.');
  }
  const link: DataLink = {
    id: nextId(project, 'link'),
    number: numberMaker(project, 'D')(),
    from,
    to,
    carries: carries ?? ['position'],
    standard: standard ?? 'nmea-0183',
    status: 'new',
    notes: '',
  };
  requireValid(dataLinkSchema, link, link.number);
  return withNewEntry(project, 'dataLinks', link);
}

export type DataLinkChange = Omit<Change<DataLink>, 'id' | 'from' | 'to'>;

/** Changes a data link: what it carries, standard, number, status, notes. @throws RefusedEdit as `setRun` */
export function setDataLink(project: Project, linkId: string, change: DataLinkChange): Project {
  const link = entryOf(project, 'dataLinks', linkId);
  if (change.number !== undefined) requireFreeNumber(project.dataLinks, link, change.number);
  return withEntry(project, 'dataLinks', changed(link, change, dataLinkSchema, link.number));
}

const wayBetweenM = (project: Project, from: Endpoint, to: Endpoint): number =>
  wayAlongM(entryOf(project, 'items', from.itemId).position, entryOf(project, 'items', to.itemId).position);
