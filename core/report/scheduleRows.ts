import type { Assessment } from '../assess.ts';
import { indexProject, placeOf } from '../catalogue/lookup.ts';
import { routedLengthM, runLengthM } from '../links/route.ts';
import { CONNECTOR_WORDS } from '../model/fit.ts';
import type { Part } from '../model/part.ts';
import type { Endpoint, Feed, Project, Run } from '../model/project.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { rated } from './context.ts';
import {
  BAND_WORDS,
  CARRIES_WORDS,
  endpointLabel,
  LINK_STANDARD_WORDS,
  PATH_SERVICE_WORDS,
  placeName,
  STATUS_WORDS,
} from './words.ts';

/** One cable of the schedule: coax run, DC feed or data link. Lengths in metres; null where the project has none. */
export interface CableRow {
  readonly kind: 'coax' | 'dc' | 'data';
  readonly id: string;
  readonly number: string;
  readonly service: string;
  readonly from: string;
  readonly to: string;
  readonly type: string;
  readonly outsideDiameterMm: number | null;
  readonly route: string;
  readonly lengthM: number | null;
  readonly lengthBasis: string;
  /** Null where the length was measured on the boat, slack and all. */
  readonly slackM: number | null;
  readonly cutM: number | null;
  readonly joints: string;
  readonly connectorA: string;
  readonly connectorB: string;
  /** Where the cable passes from the weather to the inside and wants a gland. */
  readonly gland: string;
  readonly fuse: string;
  readonly labelA: string;
  readonly labelB: string;
  readonly status: string;
}

/** Every run, feed and link of the layout, in document order: coax first, then DC, then data. */
export function cableRows(project: Project, assessment: Assessment, preferences: UnitPreferences): readonly CableRow[] {
  return [...coaxRows(project, assessment), ...dcRows(project, assessment, preferences), ...dataRows(project)];
}

function coaxRows(project: Project, assessment: Assessment): CableRow[] {
  const { parts } = indexProject(project);
  return project.runs.map((run) => {
    const cable = parts.get(run.cableId);
    const cutM = runLengthM(project, run);
    const isMeasured = run.measuredLengthM !== null;
    const label = run.labelText ?? run.number;
    return {
      kind: 'coax',
      id: run.id,
      number: run.number,
      service: runServices(project, run, assessment),
      from: endpointLabel(project, run.from),
      to: endpointLabel(project, run.to),
      type: cable?.name ?? run.cableId,
      outsideDiameterMm: cable?.kind === 'coax' ? cable.figures.outsideDiameterMm.value : null,
      route: routeText(project, run),
      lengthM: isMeasured ? cutM : routedLengthM(project, run) - run.slackM,
      lengthBasis: isMeasured ? 'measured' : 'from drawing',
      slackM: isMeasured ? null : run.slackM,
      cutM,
      joints: jointTags(project, run),
      connectorA: endConnector(project, run.connectorFromId, run.from),
      connectorB: endConnector(project, run.connectorToId, run.to),
      gland: glandText(project, run),
      fuse: '',
      labelA: label,
      labelB: label,
      status: STATUS_WORDS[run.status],
    };
  });
}

function dcRows(project: Project, assessment: Assessment, preferences: UnitPreferences): CableRow[] {
  const { parts } = indexProject(project);
  return project.feeds.map((feed) => ({
    kind: 'dc',
    id: feed.id,
    number: feed.number,
    service: 'DC supply',
    from: endpointLabel(project, feed.from),
    to: endpointLabel(project, feed.to),
    type: `pair, ${conductorText(parts.get(feed.conductorId), feed.conductorId, preferences)}`,
    outsideDiameterMm: null,
    route: endPlaces(project, feed.from, feed.to).join(', '),
    lengthM: feed.lengthM,
    lengthBasis: 'stated, one way',
    slackM: null,
    cutM: feed.lengthM,
    joints: '',
    connectorA: '',
    connectorB: '',
    gland: '',
    fuse: protectionText(feed, assessment, preferences),
    labelA: feed.number,
    labelB: feed.number,
    status: STATUS_WORDS[feed.status],
  }));
}

/** A conductor by its size in the reader's own terms; its id where nobody knows the part. */
export function conductorText(part: Part | undefined, id: string, preferences: UnitPreferences): string {
  return part?.kind === 'conductor' ? rated(preferences, part.figures.areaMm2.value, 'mm2') : id;
}

/** The feed's own fuse, else the breaker it hangs on, else that there is none. */
function protectionText(feed: Feed, assessment: Assessment, preferences: UnitPreferences): string {
  if (feed.fuse !== null) return `fuse ${rated(preferences, feed.fuse.ratingA, 'A')}`;
  const rating = assessment.feeds.find((result) => result.feedId === feed.id)?.protection.ratingA ?? null;
  return rating === null ? 'none' : `breaker ${rated(preferences, rating, 'A')}`;
}

function dataRows(project: Project): CableRow[] {
  return project.dataLinks
    .filter((link) => link.standard !== 'wifi')
    .map((link) => ({
      kind: 'data',
      id: link.id,
      number: link.number,
      service: `Data: ${link.carries.map((each) => CARRIES_WORDS[each]).join(', ')}`,
      from: endpointLabel(project, link.from),
      to: endpointLabel(project, link.to),
      type: LINK_STANDARD_WORDS[link.standard],
      outsideDiameterMm: null,
      route: endPlaces(project, link.from, link.to).join(', '),
      lengthM: null,
      lengthBasis: '',
      slackM: null,
      cutM: null,
      joints: '',
      connectorA: '',
      connectorB: '',
      gland: '',
      fuse: '',
      labelA: link.number,
      labelB: link.number,
      status: STATUS_WORDS[link.status],
    }));
}

/** What a run serves: the services of the paths over it, else the bands of the socket it starts from. */
function runServices(project: Project, run: Run, assessment: Assessment): string {
  const services = assessment.paths.filter((path) => path.runIds.includes(run.id)).map((path) => path.service);
  if (services.length > 0) return [...new Set(services)].map((service) => PATH_SERVICE_WORDS[service]).join(', ');
  const port = indexProject(project)
    .effective.get(run.from.itemId)
    ?.ports.find((each) => each.id === run.from.portId);
  return port?.medium === 'rf' ? port.bands.map((band) => BAND_WORDS[band]).join(', ') : '';
}

/** Places along a run, each once, in order. */
function routeText(project: Project, run: Run): string {
  return stops(project, run)
    .map((stop) => stop.name)
    .filter((name, index, names) => name !== '' && name !== names[index - 1])
    .join(', ');
}

function stops(project: Project, run: Run): { name: string; outdoors: boolean | null }[] {
  const { items, places } = indexProject(project);
  const end = (endpoint: Endpoint): { name: string; outdoors: boolean | null } => {
    const item = items.get(endpoint.itemId);
    const place = item ? placeOf(project, item) : undefined;
    return { name: place?.name ?? '', outdoors: item?.facts.outdoors ?? place?.outdoors ?? null };
  };
  const bends = run.via.map((bend) => ({
    name: placeName(project, bend.placeId),
    outdoors: bend.placeId === null ? null : (places.get(bend.placeId)?.outdoors ?? null),
  }));
  return [end(run.from), ...bends, end(run.to)];
}

/** Each change between weather and inside, named by the sheltered side's place. */
function glandText(project: Project, run: Run): string {
  const known = stops(project, run).filter((stop) => stop.outdoors !== null);
  const glands: string[] = [];
  known.forEach((stop, index) => {
    const before = known[index - 1];
    if (before && before.outdoors !== stop.outdoors) {
      const [outside, inside] = stop.outdoors ? [stop, before] : [before, stop];
      glands.push(outside.name && inside.name ? `${outside.name} to ${inside.name}` : 'yes');
    }
  });
  return glands.join('; ');
}

function endPlaces(project: Project, from: Endpoint, to: Endpoint): string[] {
  const { items } = indexProject(project);
  const names = [from, to].map((endpoint) => {
    const item = items.get(endpoint.itemId);
    return item ? (placeOf(project, item)?.name ?? '') : '';
  });
  return [...new Set(names.filter((name) => name !== ''))];
}

function jointTags(project: Project, run: Run): string {
  const { items, effective } = indexProject(project);
  return [run.from.itemId, run.to.itemId]
    .filter((id) => {
      const part = effective.get(id);
      return part?.kind === 'inline' && (part.deviceClass === 'joint' || part.deviceClass === 'adapter');
    })
    .map((id) => items.get(id)?.tag ?? id)
    .join(', ');
}

/** The plug fitted, else the one that the socket at this end calls for. */
function endConnector(project: Project, connectorId: string | null, endpoint: Endpoint): string {
  const { parts, effective } = indexProject(project);
  const part = connectorId === null ? undefined : parts.get(connectorId);
  if (part?.kind === 'connector') return CONNECTOR_WORDS[part.connectorType];
  const port = effective.get(endpoint.itemId)?.ports.find((each) => each.id === endpoint.portId);
  return port?.medium === 'rf' ? CONNECTOR_WORDS[port.connector] : '';
}
