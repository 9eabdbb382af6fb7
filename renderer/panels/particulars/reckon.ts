import type { Assessment } from '../../../core/assess.ts';
import type { Finding } from '../../../core/audit/types.ts';
import type { FigureChange } from '../../../core/edit/figures.ts';
import { lossInRun } from '../../../core/links/runLoss.ts';
import type { Figure } from '../../../core/model/figure.ts';
import type { AntennaClass, Part } from '../../../core/model/part.ts';
import type { Project, Status, Subject } from '../../../core/model/project.ts';
import { SERVICES } from '../../../core/model/services.ts';
import type { Unit } from '../../../core/units/quantity.ts';

export const isSameSubject = (a: Subject, b: Subject): boolean => a.kind === b.kind && a.id === b.id;

/**
 * What an edit of one column of a figure means. Another value is a new statement, so it takes neither the data sheet's
 * name nor its source with it; a tolerance, basis or source alone leaves the rest as it is known.
 */
export function figureChange(known: Figure, isOwn: boolean, change: Partial<Figure>): FigureChange {
  if (change.value !== undefined && !isOwn) return { value: change.value, tolerance: known.tolerance };
  return { ...known, ...change };
}

/** Antennas that may have an amplifier inside: those of receivers, and of sets that talk over satellites or ashore. */
const AMPLIFIED: readonly AntennaClass[] = ['gnss', 'l-band', 'cellular', 'wifi', 'broadcast', 'navtex'];

/** Keys an item may have its own figure for although its part gives none: a figure left out, or a loss given as a table. */
export function figuresNotGiven(part: Part): string[] {
  return optionalKeys(part).filter((key) => !Object.hasOwn(part.figures, key));
}

function optionalKeys(part: Part): readonly string[] {
  if (part.kind === 'inline') return Object.keys(part.lossTables);
  if (part.kind === 'antenna') return AMPLIFIED.includes(part.antennaClass) ? ['amplifierGainDb'] : [];
  if (part.kind !== 'power') return [];
  return part.powerClass === 'battery-bank' || part.powerClass === 'starter-battery' ? ['capacityAh'] : ['ratingA'];
}

/** Services that one thing alone takes away when it fails, by name. Empty when nothing hangs on it alone. */
export function servicesLostWith({ redundancy }: Assessment, subject: Subject): string[] {
  const ids = new Set(
    redundancy.components.filter((component) => isSameSubject(component.subject, subject)).map(({ id }) => id),
  );
  const lost = new Set(
    redundancy.singlePoints.filter(({ componentId }) => ids.has(componentId)).flatMap(({ serviceIds }) => serviceIds),
  );
  return SERVICES.filter(({ id }) => lost.has(id)).map(({ name }) => name);
}

/** Services that use one thing in some way, by name: what is weaker without it even where another way is left. */
export function servicesUsing({ redundancy }: Assessment, subject: Subject): string[] {
  const ids = new Set(
    redundancy.components.filter((component) => isSameSubject(component.subject, subject)).map(({ id }) => id),
  );
  const used = new Set(
    redundancy.ways.filter(({ hangsOn }) => hangsOn.some((id) => ids.has(id))).map(({ serviceId }) => serviceId),
  );
  return SERVICES.filter(({ id }) => used.has(id)).map(({ name }) => name);
}

/** Remarks about one thing that still stand. */
export function findingsAbout({ findings }: Assessment, subject: Subject): Finding[] {
  return findings.filter(
    ({ overruled, subjects }) => overruled === null && subjects.some((each) => isSameSubject(each, subject)),
  );
}

/** Loss of one run in one path. */
export interface RunLoss {
  readonly pathId: string;
  readonly radioId: string;
  readonly antennaId: string;
  readonly frequencyMhz: number;
  /** Of this run, its plugs included, dB. */
  readonly runDb: number;
  /** Of the whole path, dB. */
  readonly pathDb: number;
}

/** What a run loses in every path that goes through it. */
export function lossesOfRun({ paths }: Assessment, runId: string): RunLoss[] {
  return paths.flatMap((path) => {
    const share = lossInRun(path, runId);
    if (!share) return [];
    const { id, radioId, antennaId, frequencyMhz, lossDb } = path;
    return [{ pathId: id, radioId, antennaId, frequencyMhz, runDb: share.lossDb, pathDb: lossDb }];
  });
}

const KIND_WORDS: Readonly<Record<Subject['kind'], readonly [string, string]>> = {
  item: ['item', 'items'],
  run: ['cable run', 'cable runs'],
  feed: ['DC feed', 'DC feeds'],
  link: ['data link', 'data links'],
  place: ['place', 'places'],
  structure: ['structure', 'structures'],
  compartment: ['compartment', 'compartments'],
  boat: ['boat', 'boats'],
};

/** `3 items, 1 cable run`. */
export function countWords(subjects: readonly Subject[]): string {
  const counts = new Map<Subject['kind'], number>();
  for (const { kind } of subjects) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => `${count} ${KIND_WORDS[kind][count === 1 ? 0 : 1]}`).join(', ');
}

/** The status all of them share; null when they differ or none of them has one. */
export function commonStatus(project: Project, subjects: readonly Subject[]): Status | null {
  const entries = subjects.flatMap((subject) => statusEntries(project, subject));
  const [first] = entries;
  return first && entries.every(({ status }) => status === first.status) ? first.status : null;
}

/** Whether a kind of thing has a status at all. */
export const hasStatus = ({ kind }: Subject): boolean =>
  kind === 'item' || kind === 'run' || kind === 'feed' || kind === 'link';

function statusEntries(project: Project, { kind, id }: Subject): readonly { readonly status: Status }[] {
  const lists: Partial<Record<Subject['kind'], readonly { readonly id: string; readonly status: Status }[]>> = {
    item: project.items,
    run: project.runs,
    feed: project.feeds,
    link: project.dataLinks,
  };
  return lists[kind]?.filter((entry) => entry.id === id) ?? [];
}

/** Whether a text is a day of the calendar written as `2026-05-31`. */
export function isIsoDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const lastDay = [31, isLeap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return lastDay !== undefined && day >= 1 && day <= lastDay;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Most decimals a figure is shown with. */
const MOST_DECIMALS = 4;

/**
 * As few decimals as show a stored figure whole, at most four. Lengths keep their usual number: in feet and inches the
 * decimals of the stored metres say nothing.
 */
export function decimalsOf(value: number, unit: Unit, usual: number): number {
  if (unit === 'm' || unit === 'mm') return usual;
  let digits = 0;
  while (digits < MOST_DECIMALS && Math.abs(Number(value.toFixed(digits)) - value) > 1e-9) digits += 1;
  return digits;
}
