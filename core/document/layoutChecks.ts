import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { PartKind, Port } from '../model/part.ts';
import { isPlaceable } from '../model/placeable.ts';
import type { Endpoint, Project, Run } from '../model/project.ts';
import { findFeedLoop, findRunLoop } from './loops.ts';
import { overrideProblems } from './overrides.ts';
import { quoted, type Report } from './report.ts';

type Path = readonly PropertyKey[];

/**
 * Checks one layout: the current one, or an alternative put in its place (`path` leads to it). Ids are known to be unique.
 * Parts nobody knows are kept and noted; what depends on them cannot be checked.
 */
export function checkLayout(project: Project, path: Path, report: Report): void {
  const index = indexProject(project);
  checkItems(project, index, path, report);
  checkRuns(project, index, path, report);
  checkFeeds(project, index, path, report);
  project.dataLinks.forEach((link, at) => {
    checkEnds(index, [...path, 'dataLinks', at], link, 'data', report);
  });
  noteTwice(
    project.items.map(({ tag }) => tag),
    'tag',
    [...path, 'items'],
    report,
  );
  for (const key of ['runs', 'feeds', 'dataLinks'] as const) {
    noteTwice(
      project[key].map(({ number }) => number),
      'number',
      [...path, key],
      report,
    );
  }
  const runLoop = findRunLoop(project);
  if (runLoop !== null) {
    report.refuse([...path, 'runs'], `Coax closes a loop: ${runLoop}.`, 'Take one of these runs out.');
  }
  const feedLoop = findFeedLoop(project);
  if (feedLoop !== null) {
    report.refuse([...path, 'feeds'], `DC feeds close a loop: ${feedLoop}.`, 'Take one of these feeds out.');
  }
}

function checkItems(project: Project, index: ProjectIndex, path: Path, report: Report): void {
  project.items.forEach((item, at) => {
    const own = [...path, 'items', at];
    const part = index.parts.get(item.partId);
    if (item.tag.trim() === '')
      report.refuse([...own, 'tag'], 'The tag is empty.', 'Give the item a tag, e.g. "VHF-1".');
    if (item.placeId !== null && !index.places.has(item.placeId)) {
      report.refuse(
        [...own, 'placeId'],
        `There is no place "${item.placeId}".`,
        `Name one of ${quoted(index.places.keys())}, or put null.`,
      );
    }
    if (!part) {
      report.note(
        own,
        `the part "${item.partId}" is not known to this version; it is kept as it is, and nothing is computed for it.`,
      );
    } else if (!isPlaceable(part)) {
      report.refuse(
        [...own, 'partId'],
        `"${item.partId}" (${part.name}) is not a part that is placed aboard.`,
        'Name the part of a radio, antenna or other thing that is fitted.',
      );
    } else {
      report.refuseAll([...own, 'overrides'], overrideProblems(part, item.overrides));
    }
  });
}

function checkRuns(project: Project, index: ProjectIndex, path: Path, report: Report): void {
  const taken = new Map<string, Run>();
  project.runs.forEach((run, at) => {
    const own = [...path, 'runs', at];
    checkEnds(index, own, run, 'rf', report);
    for (const side of ['from', 'to'] as const) {
      const key = JSON.stringify([run[side].itemId, run[side].portId]);
      const other = taken.get(key);
      if (other === undefined) taken.set(key, run);
      if (other === undefined || other === run) continue;
      const tag = index.items.get(run[side].itemId)?.tag ?? run[side].itemId;
      report.refuse(
        [...own, side],
        `The port "${run[side].portId}" of ${tag} already has the run "${other.number}".`,
        'Take one of the two to another port, or put a splitter between them.',
      );
    }
    checkPartKind(index, [...own, 'cableId'], run.cableId, 'coax', report);
    for (const key of ['connectorFromId', 'connectorToId'] as const) {
      const partId = run[key];
      if (partId !== null) checkPartKind(index, [...own, key], partId, 'connector', report);
    }
    run.via.forEach((bend, bendAt) => {
      if (bend.placeId === null || index.places.has(bend.placeId)) return;
      report.refuse(
        [...own, 'via', bendAt, 'placeId'],
        `There is no place "${bend.placeId}".`,
        'Name a place of the boat, or put null.',
      );
    });
  });
}

function checkFeeds(project: Project, index: ProjectIndex, path: Path, report: Report): void {
  project.feeds.forEach((feed, at) => {
    const own = [...path, 'feeds', at];
    const [from, to] = checkEnds(index, own, feed, 'dc', report);
    checkDirection(from, to, own, report);
    checkPartKind(index, [...own, 'conductorId'], feed.conductorId, 'conductor', report);
  });
}

function checkDirection(from: Port | undefined, to: Port | undefined, path: Path, report: Report): void {
  const isFromWrong = from?.medium === 'dc' && from.role === 'in';
  const isToWrong = to?.medium === 'dc' && to.role === 'out';
  const rule = 'A feed goes from the source to the load:';
  if (isFromWrong && isToWrong) {
    const what = `The feed goes from "${from.label}", which takes current, to "${to.label}", which gives it.`;
    report.refuse(path, what, `${rule} turn it round.`);
  } else if (isFromWrong) {
    report.refuse(
      [...path, 'from'],
      `The feed starts at "${from.label}", which takes current.`,
      `${rule} start it at a source.`,
    );
  } else if (isToWrong) {
    report.refuse(
      [...path, 'to'],
      `The feed ends at "${to.label}", which gives current.`,
      `${rule} end it at a supply terminal.`,
    );
  }
}

const MEDIUM_WORDS: Readonly<Record<Port['medium'], readonly [line: string, port: string]>> = {
  rf: ['A cable run', 'an antenna socket'],
  dc: ['A DC feed', 'a DC terminal'],
  data: ['A data link', 'a data port'],
};

/** Checks both ends of a line and returns their ports where they are known and right. */
function checkEnds(
  index: ProjectIndex,
  path: Path,
  line: { readonly from: Endpoint; readonly to: Endpoint },
  medium: Port['medium'],
  report: Report,
): readonly [Port | undefined, Port | undefined] {
  if (line.from.itemId === line.to.itemId) {
    const tag = index.items.get(line.from.itemId)?.tag ?? line.from.itemId;
    report.refuse([...path, 'to'], `It goes from ${tag} to itself.`, 'Name another item at one end, or take it out.');
  }
  return [
    checkEnd(index, [...path, 'from'], line.from, medium, report),
    checkEnd(index, [...path, 'to'], line.to, medium, report),
  ];
}

function checkEnd(
  index: ProjectIndex,
  path: Path,
  { itemId, portId }: Endpoint,
  medium: Port['medium'],
  report: Report,
): Port | undefined {
  const item = index.items.get(itemId);
  if (!item) {
    const mend = `Name the id of an item; there are ${quoted(index.items.keys())}.`;
    report.refuse([...path, 'itemId'], `There is no item "${itemId}".`, mend);
    return undefined;
  }
  const part = index.parts.get(item.partId);
  if (!part) return undefined;
  const port = part.ports.find((candidate) => candidate.id === portId);
  if (!port) {
    const mend = `Name one of its ports: ${quoted(part.ports.map(({ id }) => id))}.`;
    report.refuse([...path, 'portId'], `${item.tag} (${part.name}) has no port "${portId}".`, mend);
    return undefined;
  }
  if (port.medium === medium) return port;
  const [lineWords, portWords] = MEDIUM_WORDS[medium];
  report.refuse(
    [...path, 'portId'],
    `${lineWords} ends at ${portWords}, but "${port.label}" of ${item.tag} is ${MEDIUM_WORDS[port.medium][1]}.`,
    `Name ${portWords} of ${item.tag}, or make this another kind of connection.`,
  );
  return undefined;
}

const KIND_WORDS: Readonly<Record<'coax' | 'connector' | 'conductor', string>> = {
  coax: 'a coaxial cable',
  connector: 'a connector',
  conductor: 'a DC conductor',
};

function checkPartKind(
  index: ProjectIndex,
  path: Path,
  partId: string,
  kind: PartKind & keyof typeof KIND_WORDS,
  report: Report,
): void {
  const part = index.parts.get(partId);
  if (!part) {
    report.note(
      path,
      `the part "${partId}" is not known to this version; it is kept as it is, and nothing is computed with it.`,
    );
  } else if (part.kind !== kind) {
    report.refuse(
      path,
      `"${partId}" (${part.name}) is not ${KIND_WORDS[kind]}.`,
      `Name the id of ${KIND_WORDS[kind]}.`,
    );
  }
}

function noteTwice(names: readonly string[], word: 'tag' | 'number', path: Path, report: Report): void {
  const first = new Map<string, number>();
  names.forEach((name, at) => {
    const before = first.get(name);
    if (before === undefined) first.set(name, at);
    else
      report.note(
        [...path, at],
        `the ${word} is also that of entry ${before}; two labels that read alike lead to mistakes.`,
      );
  });
}
