import { assess } from '../../core/assess.ts';
import type { Project } from '../../core/model/project.ts';
import { profileSvg } from '../../core/report/profileSheet.ts';
import { cableScheduleCsv, pathLossCsv } from '../../core/report/schedules.ts';
import { installSheet } from '../../core/report/sheet.ts';
import type { Host, Request } from '../../electron/contract.ts';
import { sheetPdf } from '../host/pdf.ts';
import type { AppStore } from '../store/store.ts';

export async function exportPdf(store: AppStore, host: Host): Promise<void> {
  await exportBytes(store, host, 'install-sheet', 'pdf', await madeSheet(store));
}

/** Prints the install sheet: the same PDF, handed to what prints on this machine. */
export async function printSheet(store: AppStore, host: Host): Promise<void> {
  const bytes = await madeSheet(store);
  const suggestedName = `${fileStem(store.getState().project)}-install-sheet.pdf`;
  const answer = await host.print({ suggestedName, bytes });
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else store.getState().say({ tone: 'plain', text: `${answer.value.name} is open for printing` });
}

async function madeSheet(store: AppStore): Promise<Uint8Array<ArrayBuffer>> {
  const { project, preferences } = store.getState();
  store.getState().say({ tone: 'plain', text: 'Making the install sheet…' });
  const sheet = installSheet(project, assess(project), { paper: preferences.paper, preferences, date: today() });
  return sheetPdf(sheet);
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
