import { indexProject } from '../catalogue/lookup.ts';
import type { PathService } from '../links/types.ts';
import type { Basis } from '../model/figure.ts';
import type { Band, StandaloneClass } from '../model/part.ts';
import type { DataLink, Endpoint, Item, Project, Status, Subject } from '../model/project.ts';
import { type Grade, SERVICES, type ServiceId } from '../model/services.ts';
import type { GradeLetter } from './types.ts';

/** How a number is known, as printed beside it. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  'data-sheet': 'data sheet',
  standard: 'standard',
  'published-test': 'published test',
  measured: 'measured',
  computed: 'computed',
  assumed: 'assumed',
};

export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  keep: 'keep',
  new: 'new',
  remove: 'remove',
  unknown: 'unknown',
  'not-accessible': 'not accessible',
};

export const PATH_SERVICE_WORDS: Readonly<Record<PathService, string>> = {
  'vhf-voice': 'VHF voice',
  ais: 'AIS',
  'mf-hf': 'MF/HF',
  'l-band': 'L-band satellite',
  gnss: 'GNSS',
  cellular: 'Cellular',
  wifi: 'Wi-Fi',
  broadcast: 'Broadcast',
  other: 'Other',
};

export const BAND_WORDS: Readonly<Record<Band, string>> = {
  'mf-hf': 'MF/HF',
  navtex: 'NAVTEX',
  broadcast: 'broadcast',
  'vhf-marine': 'marine VHF',
  'beacon-406': '406 MHz',
  cellular: 'cellular',
  gnss: 'GNSS',
  'l-band': 'L-band satellite',
  wifi: 'Wi-Fi',
  radar: 'radar',
  'satellite-broadband': 'satellite broadband',
};

export const STANDALONE_WORDS: Readonly<Record<StandaloneClass, string>> = {
  'beacon-406': '406 MHz beacon',
  'personal-beacon': 'personal locator beacon',
  'radar-sart': 'radar SART',
  'ais-sart': 'AIS-SART',
  'handheld-vhf': 'handheld VHF',
  'handheld-vhf-dsc': 'handheld VHF with DSC',
  'ais-mob': 'AIS person-overboard device',
  'handheld-satellite': 'handheld satellite messenger',
};

export const CARRIES_WORDS: Readonly<Record<DataLink['carries'][number], string>> = {
  position: 'position',
  heading: 'heading',
  ais: 'AIS targets',
  network: 'network',
};

export const LINK_STANDARD_WORDS: Readonly<Record<DataLink['standard'], string>> = {
  'nmea-0183': 'NMEA 0183',
  'nmea-2000': 'NMEA 2000',
  ethernet: 'Ethernet',
  wifi: 'Wi-Fi',
};

export function gradeLetter(grade: Grade): GradeLetter {
  return grade === 'full' ? 'F' : grade === 'reduced' ? 'R' : '–';
}

export function serviceOf(id: ServiceId): { readonly code: string; readonly name: string } {
  const service = SERVICES.find((each) => each.id === id);
  if (!service) throw new RangeError(`There is no service "${id}".`);
  return service;
}

/** What a person calls an item: its own name, else its part's, else the part id of a part nobody knows. */
export function itemName(project: Project, item: Item): string {
  return item.name || indexProject(project).parts.get(item.partId)?.name || `unknown part ${item.partId}`;
}

/** Tag of an item, or its id when the item is not in this layout. */
export function itemTag(project: Project, itemId: string): string {
  return indexProject(project).items.get(itemId)?.tag ?? itemId;
}

/** `VHF-1 / ANT`: unit and socket of one end of a cable. */
export function endpointLabel(project: Project, endpoint: Endpoint): string {
  const port = indexProject(project)
    .effective.get(endpoint.itemId)
    ?.ports.find((each) => each.id === endpoint.portId);
  return `${itemTag(project, endpoint.itemId)} / ${port?.label || endpoint.portId}`;
}

/** Name of a place, or of the spot itself when the item stands free. */
export function placeName(project: Project, placeId: string | null): string {
  return placeId === null ? '' : (indexProject(project).places.get(placeId)?.name ?? '');
}

/** What the drawing calls the thing a finding or a component points at. */
export function subjectLabel(project: Project, subject: Subject): string {
  const { id } = subject;
  switch (subject.kind) {
    case 'item':
      return itemTag(project, id);
    case 'run':
      return project.runs.find((run) => run.id === id)?.number ?? id;
    case 'feed':
      return project.feeds.find((feed) => feed.id === id)?.number ?? id;
    case 'link':
      return project.dataLinks.find((link) => link.id === id)?.number ?? id;
    case 'place':
      return placeName(project, id) || id;
    case 'structure':
      return [...project.boat.masts, ...project.boat.fittings].find((each) => each.id === id)?.name ?? id;
    case 'compartment':
      return project.boat.compartments.find((each) => each.id === id)?.name ?? id;
    case 'boat':
      return project.boat.name;
  }
}
