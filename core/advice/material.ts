import { indexProject } from '../catalogue/lookup.ts';
import { wayAlongM } from '../edit/geometry.ts';
import { runLengthM } from '../links/route.ts';
import type { DataLink, Endpoint, Feed, Item, Project, Run } from '../model/project.ts';
import { q, type RichText } from '../units/quantity.ts';
import { placeWords } from './survey.ts';
import type { Material } from './types.ts';

/** What a change puts in, makes anew and takes out, read off the drawings before and after and not written by hand. */
export function materialOf(before: Project, after: Project): Material {
  const added = [
    ...newOf(before.items, after.items).map((item) => itemWords(after, item)),
    ...newOf(before.runs, after.runs).map((run) => runWords(after, run)),
    ...newOf(before.feeds, after.feeds).map((feed) => feedWords(after, feed)),
    ...newOf(before.dataLinks, after.dataLinks).map((link) => linkWords(after, link)),
  ];
  const changed = [...changedItems(before, after), ...changedRuns(before, after), ...changedFeeds(before, after)];
  const adds = [...added, ...changed];
  const takesOut = [
    ...newOf(after.items, before.items).map((item): RichText => [`${item.tag}, ${partName(before, item.partId)}`]),
    ...newOf(after.runs, before.runs).map((run): RichText => [`${run.number}, ${between(before, run)}`]),
    ...newOf(after.feeds, before.feeds).map((feed): RichText => [`${feed.number}, ${between(before, feed)}`]),
  ];
  return { adds, takesOut, count: adds.length };
}

interface Entry {
  readonly id: string;
}

function newOf<T extends Entry>(before: readonly T[], after: readonly T[]): readonly T[] {
  const known = new Set(before.map(({ id }) => id));
  return after.filter(({ id }) => !known.has(id));
}

const partName = (project: Project, partId: string): string => indexProject(project).parts.get(partId)?.name ?? partId;
const tag = (project: Project, end: Endpoint): string => indexProject(project).items.get(end.itemId)?.tag ?? end.itemId;
const between = (project: Project, line: Run | Feed | DataLink): string =>
  `${tag(project, line.from)} to ${tag(project, line.to)}`;

function placeName(project: Project, item: Item): string {
  const place = project.places.find(({ id }) => id === item.placeId);
  return place ? `, at ${placeWords(place.name)}` : '';
}

function itemWords(project: Project, item: Item): RichText {
  const words = `${item.tag}, ${partName(project, item.partId)}${placeName(project, item)}`;
  const { leadLengthM, leadConnector } = item.facts;
  if (leadLengthM === undefined) return [words];
  return [words, ', with a lead of ', q(leadLengthM, 'm', 0), ` and a ${leadConnector ?? 'fitting'} plug`];
}

function runWords(project: Project, run: Run): RichText {
  return [
    `${run.number}, ${partName(project, run.cableId)}, ${between(project, run)}, `,
    q(runLengthM(project, run), 'm'),
  ];
}

function feedWords(project: Project, feed: Feed): RichText {
  const words = [
    `${feed.number}, pair of `,
    pairOf(project, feed),
    `, ${between(project, feed)}, `,
    q(feed.lengthM, 'm'),
  ];
  return feed.fuse ? [...words, ', fuse ', q(feed.fuse.ratingA, 'A', 0), ' at the source'] : words;
}

/** `2.5 mm²`, or the id of a pair that is not in the parts list. */
function pairOf(project: Project, feed: Feed): RichText[number] {
  const part = indexProject(project).parts.get(feed.conductorId);
  return part?.kind === 'conductor' ? q(part.figures.areaMm2.value, 'mm2') : feed.conductorId;
}

function linkWords(project: Project, link: DataLink): RichText {
  const { items } = indexProject(project);
  const [a, b] = [items.get(link.from.itemId), items.get(link.to.itemId)];
  const words = `${link.number}, data cable, ${between(project, link)}, about `;
  return a && b ? [words, q(wayAlongM(a.position, b.position), 'm')] : [words];
}

/** Items that stay but are moved, swapped or get another lead. */
function changedItems(before: Project, after: Project): readonly RichText[] {
  const old = new Map(before.items.map((item) => [item.id, item]));
  return after.items.flatMap((item): RichText[] => {
    const was = old.get(item.id);
    if (!was || was === item) return [];
    if (was.partId !== item.partId) return [[`${item.tag} as ${partName(after, item.partId)}`]];
    const { leadLengthM, leadConnector } = item.facts;
    if (leadLengthM !== undefined && leadLengthM !== was.facts.leadLengthM) {
      return [[`${item.tag}: lead of `, q(leadLengthM, 'm', 0), ` with a ${leadConnector ?? 'fitting'} plug`]];
    }
    return was.position === item.position
      ? []
      : [[`${item.tag} moved${placeName(after, item).replace(', at', ' to')}`]];
  });
}

/** Runs that stay but end elsewhere, or are made anew because the old cable does not reach. */
function changedRuns(before: Project, after: Project): readonly RichText[] {
  const old = new Map(before.runs.map((run) => [run.id, run]));
  return after.runs.flatMap((run): RichText[] => {
    const was = old.get(run.id);
    if (!was || was === run) return [];
    if (between(before, was) !== between(after, run))
      return [[`${run.number} taken to ${newEnd(before, was, after, run)}`]];
    const words = `${run.number} made anew of ${partName(after, run.cableId)}, `;
    return run.measuredLengthM === was.measuredLengthM ? [] : [[words, q(runLengthM(after, run), 'm')]];
  });
}

/** Feeds that stay but need another length of pair. */
function changedFeeds(before: Project, after: Project): readonly RichText[] {
  const old = new Map(before.feeds.map((feed) => [feed.id, feed]));
  return after.feeds.flatMap((feed): RichText[] => {
    const was = old.get(feed.id);
    if (!was || was.lengthM === feed.lengthM) return [];
    const pair = pairOf(after, feed);
    return [
      [`${feed.number} made anew, pair of `, pair, ', ', q(feed.lengthM, 'm'), ' in place of ', q(was.lengthM, 'm')],
    ];
  });
}

function newEnd(before: Project, was: Run, after: Project, run: Run): string {
  const [from, to] = [tag(after, run.from), tag(after, run.to)];
  return from === tag(before, was.from) ? to : from;
}
