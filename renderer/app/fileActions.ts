import brannochTern from '../../assets/demo/brannoch-tern.backstay?raw';
import pelluna from '../../assets/demo/pelluna.backstay?raw';
import vessarine from '../../assets/demo/vessarine.backstay?raw';
import { assess } from '../../core/assess.ts';
import { parseProject, problemSentence } from '../../core/document/load.ts';
import { serialiseProject } from '../../core/document/save.ts';
import type { Project } from '../../core/model/project.ts';
import { profileSvg } from '../../core/report/profileSheet.ts';
import { cableScheduleCsv, pathLossCsv } from '../../core/report/schedules.ts';
import { installSheet } from '../../core/report/sheet.ts';
import type { Host, Opened, Request } from '../../electron/contract.ts';
import { sheetPdf } from '../host/pdf.ts';
import { type AppStore, isUnsaved } from '../store/store.ts';

/** The demo boats, first the one a first start opens. Boats, places and people are invented. */
export const DEMOS = [
  { id: 'brannoch-tern', name: 'Brannoch Tern, steel ketch, owner refit', text: brannochTern },
  { id: 'pelluna', name: 'Pelluna, aluminium trawler, electrician’s quote', text: pelluna },
  { id: 'vessarine', name: 'Vessarine, catamaran, survey before a passage', text: vessarine },
] as const;
export type DemoId = (typeof DEMOS)[number]['id'];

/** The project of a demo boat. A demo that does not load is a defect, so it throws. */
export function demoProject(id: DemoId): Project {
  const demo = DEMOS.find((known) => known.id === id);
  const loaded = demo && parseProject(demo.text);
  if (!loaded?.ok) throw new Error(`demo boat ${id} does not load`);
  return loaded.project;
}

/** Shows a document that was opened; a bad one leaves everything as it was and says what is wrong, where, and the mend. */
export function showOpened(store: AppStore, opened: Opened): void {
  const loaded = parseProject(opened.text);
  if (!loaded.ok) {
    const fileProblems = { name: opened.name, sentences: loaded.problems.map(problemSentence) };
    store.getState().setView({ dialog: 'file-problems', fileProblems });
    store.getState().say({ tone: 'refusal', text: `${opened.name} was not opened. What was open is as it was.` });
    return;
  }
  store.getState().openProject(loaded.project, { handle: opened.handle, name: opened.name });
  store.getState().say({ tone: 'plain', text: [`Opened ${opened.name}`, ...loaded.notes].join('. ') });
}

/** Asks before unsaved work is replaced. */
function mayReplace(store: AppStore): boolean {
  const state = store.getState();
  return (
    !isUnsaved(state) ||
    window.confirm(`“${state.project.title}” has changes that are not saved. Open another document and lose them?`)
  );
}

/** A boat from the New boat dialog becomes the document. */
export async function newBoat(store: AppStore, project: Project): Promise<void> {
  if (mayReplace(store)) store.getState().openProject(project, null);
}

export async function openDemo(store: AppStore, id: DemoId): Promise<void> {
  if (mayReplace(store)) store.getState().openProject(demoProject(id), null);
}

export async function openFile(store: AppStore, host: Host): Promise<void> {
  if (!mayReplace(store)) return;
  const answer = await host.open();
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else if (answer.value) showOpened(store, answer.value);
}

export async function saveFile(store: AppStore, host: Host): Promise<void> {
  const { file, project } = store.getState();
  if (!file?.handle) return saveFileAs(store, host);
  const answer = await host.save({ handle: file.handle, text: serialiseProject(project) });
  afterSave(store, project, answer);
}

export async function saveFileAs(store: AppStore, host: Host): Promise<void> {
  const { file, project } = store.getState();
  const suggestedName = file?.name ?? `${fileStem(project)}.backstay`;
  const answer = await host.saveAs({ suggestedName, text: serialiseProject(project) });
  afterSave(store, project, answer);
}

function afterSave(store: AppStore, project: Project, answer: Awaited<ReturnType<Host['saveAs']>>): void {
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else if (answer.value) {
    store.getState().markSaved(project, { handle: answer.value.handle, name: answer.value.name });
    store.getState().say({ tone: 'plain', text: `Saved ${answer.value.name}` });
  }
}

export async function exportPdf(store: AppStore, host: Host): Promise<void> {
  const { project, preferences } = store.getState();
  store.getState().say({ tone: 'plain', text: 'Making the install sheet…' });
  const sheet = installSheet(project, assess(project), { paper: preferences.paper, preferences, date: today() });
  await exportBytes(store, host, 'install-sheet', 'pdf', await sheetPdf(sheet));
}

export async function exportSchedule(store: AppStore, host: Host): Promise<void> {
  const { project, preferences } = store.getState();
  await exportText(store, host, 'cable-schedule', 'csv', cableScheduleCsv(project, assess(project), preferences));
}

export async function exportLosses(store: AppStore, host: Host): Promise<void> {
  const { project, preferences } = store.getState();
  await exportText(store, host, 'path-losses', 'csv', pathLossCsv(project, assess(project), preferences));
}

export async function exportSvg(store: AppStore, host: Host): Promise<void> {
  const { project, preferences } = store.getState();
  await exportText(store, host, 'profile', 'svg', profileSvg(project, assess(project), preferences.paper, preferences));
}

async function exportText(
  store: AppStore,
  host: Host,
  name: string,
  kind: Request<'exportFile'>['kind'],
  text: string,
): Promise<void> {
  await exportBytes(store, host, name, kind, new TextEncoder().encode(text));
}

async function exportBytes(
  store: AppStore,
  host: Host,
  name: string,
  kind: Request<'exportFile'>['kind'],
  bytes: Uint8Array<ArrayBuffer>,
): Promise<void> {
  const suggestedName = `${fileStem(store.getState().project)}-${name}.${kind}`;
  const answer = await host.exportFile({ suggestedName, kind, bytes });
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else if (answer.value) store.getState().say({ tone: 'plain', text: `Exported ${answer.value.name}` });
}

/** A file name from the boat's name: letters, digits and hyphens of any script, nothing a file system minds. */
export function fileStem(project: Project): string {
  const stem = project.boat.name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return stem || 'boat';
}

/** The day as the user's clock has it, ISO form. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
