import type { Assessment } from '../../core/assess.ts';
import { indexProject } from '../../core/catalogue/lookup.ts';
import { runLengthM } from '../../core/links/route.ts';
import { lossInRun } from '../../core/links/runLoss.ts';
import type { PathBudget } from '../../core/links/types.ts';
import type { DataLink, Endpoint, Feed, Item, Project, Run, Subject } from '../../core/model/project.ts';
import { formatQuantity } from '../../core/units/format.ts';
import type { UnitPreferences } from '../../core/units/preferences.ts';
import { positionWords } from '../commands/words.ts';

/** What the sentences of the outline are made from. */
export interface Told {
  readonly project: Project;
  readonly assessment: Assessment;
  readonly preferences: UnitPreferences;
}

/** `VHF-1, fixed VHF at Chart table, 2 findings`. */
export function itemSentence(told: Told, item: Item): string {
  const { project, preferences } = told;
  const { parts, places } = indexProject(project);
  const name = item.name || parts.get(item.partId)?.name || 'unknown part';
  const place = item.placeId === null ? undefined : places.get(item.placeId);
  const where = place ? `at ${place.name}` : `at ${positionWords(item.position, preferences)}`;
  return `${item.tag}, ${name} ${where}${findingWords(told, { kind: 'item', id: item.id })}`;
}

/** `W01 RG-58, A1 to J1, 17.0 m, 3.57 dB, 1 finding`. */
export function runSentence(told: Told, run: Run): string {
  const { project, preferences } = told;
  const cable = indexProject(project).parts.get(run.cableId)?.name ?? 'unknown cable';
  const length = formatQuantity({ value: runLengthM(project, run), unit: 'm' }, preferences);
  const loss = runLossDb(told.assessment, run.id);
  const lossWords = loss === null ? '' : `, ${formatQuantity({ value: loss, unit: 'dB' }, preferences)}`;
  const ends = `${tagOf(project, run.from)} to ${tagOf(project, run.to)}`;
  return `${run.number} ${cable}, ${ends}, ${length}${lossWords}${findingWords(told, { kind: 'run', id: run.id })}`;
}

/** `F03, B7 to VHF-1, 2.5 mm², 4.0 m`. */
export function feedSentence(told: Told, feed: Feed): string {
  const { project, preferences } = told;
  const conductor = indexProject(project).parts.get(feed.conductorId)?.name ?? 'unknown conductor';
  const length = formatQuantity({ value: feed.lengthM, unit: 'm' }, preferences);
  const ends = `${tagOf(project, feed.from)} to ${tagOf(project, feed.to)}`;
  return `${feed.number}, ${ends}, ${conductor}, ${length}${findingWords(told, { kind: 'feed', id: feed.id })}`;
}

/** `D01, GNSS-1 to VHF-1, position`. */
export function linkSentence(told: Told, link: DataLink): string {
  const { project } = told;
  const ends = `${tagOf(project, link.from)} to ${tagOf(project, link.to)}`;
  return `${link.number}, ${ends}, ${link.carries.join(' and ')}${findingWords(told, { kind: 'link', id: link.id })}`;
}

/** What is selected, in a few words; empty for nothing. */
export function selectionSentence(told: Told, selection: readonly Subject[]): string {
  const [only] = selection;
  if (!only) return '';
  if (selection.length > 1) return `${selection.length} selected`;
  const { project } = told;
  const item = project.items.find(({ id }) => only.kind === 'item' && id === only.id);
  if (item) return itemSentence(told, item);
  const run = project.runs.find(({ id }) => only.kind === 'run' && id === only.id);
  if (run) return runSentence(told, run);
  const line = [...project.feeds, ...project.dataLinks].find(({ id }) => id === only.id);
  return line?.number ?? project.places.find(({ id }) => id === only.id)?.name ?? '';
}

/** What a run loses in the strongest path through it, plugs included, as the drawing writes it, dB; null where no path uses it. */
export function runLossDb(assessment: Assessment, runId: string): number | null {
  let strongest: PathBudget | null = null;
  for (const path of assessment.paths) {
    if (!path.runIds.includes(runId)) continue;
    if (!strongest || (path.txPowerW ?? 0) > (strongest.txPowerW ?? 0)) strongest = path;
  }
  return strongest && (lossInRun(strongest, runId)?.lossDb ?? null);
}

const tagOf = (project: Project, end: Endpoint): string =>
  indexProject(project).items.get(end.itemId)?.tag ?? end.itemId;

function findingWords({ assessment }: Told, subject: Subject): string {
  const count = assessment.findings.filter(
    ({ overruled, subjects }) =>
      overruled === null && subjects.some(({ kind, id }) => kind === subject.kind && id === subject.id),
  ).length;
  if (count === 0) return '';
  return count === 1 ? ', 1 finding' : `, ${count} findings`;
}
