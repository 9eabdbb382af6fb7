import { basename } from 'node:path';
import type { FileFilter, IpcMain, IpcMainInvokeEvent, OpenDialogOptions, SaveDialogOptions } from 'electron';
import { CHANNELS, type ChannelName, type Request, type Response } from '../contract.ts';
import { answered, type DocumentTable, writeWhole } from '../node/documents.ts';

/** The Electron parts the handlers need, so that they run under test without the runtime. */
export interface HandlerParts {
  readonly ipcMain: Pick<IpcMain, 'handle'>;
  readonly documents: DocumentTable;
  showOpenDialog(options: OpenDialogOptions): Promise<{ canceled: boolean; filePaths: string[] }>;
  showSaveDialog(options: SaveDialogOptions): Promise<{ canceled: boolean; filePath: string }>;
  setUnsaved(unsaved: boolean, title: string): void;
  /** Whether a call comes from the app's own page in the main frame. */
  isOwnPage(event: IpcMainInvokeEvent): boolean;
}

const DOCUMENT_FILTER = { name: 'Backstay document', extensions: ['backstay'] };
const EXPORT_FILTERS: Readonly<Record<Request<'exportFile'>['kind'], FileFilter>> = {
  pdf: { name: 'PDF', extensions: ['pdf'] },
  csv: { name: 'CSV', extensions: ['csv'] },
  svg: { name: 'SVG drawing', extensions: ['svg'] },
  json: { name: 'JSON', extensions: ['json'] },
};

/** Registers every channel of the contract. */
export function registerHandlers(parts: HandlerParts): void {
  const { documents } = parts;
  handle(parts, 'open', () =>
    answered(async () => {
      const { canceled, filePaths } = await parts.showOpenDialog({
        properties: ['openFile'],
        filters: [DOCUMENT_FILTER],
      });
      const path = filePaths[0];
      return canceled || path === undefined ? null : documents.open(path);
    }),
  );
  handle(parts, 'save', ({ handle: document, text }) => answered(() => documents.save(document, text)));
  handle(parts, 'saveAs', ({ suggestedName, text }) =>
    answered(async () => {
      const { canceled, filePath } = await parts.showSaveDialog({
        defaultPath: basename(suggestedName),
        filters: [DOCUMENT_FILTER],
      });
      return canceled || filePath === '' ? null : documents.saveAs(filePath, text);
    }),
  );
  handle(parts, 'exportFile', ({ suggestedName, kind, bytes }) =>
    answered(async () => {
      const { canceled, filePath } = await parts.showSaveDialog({
        defaultPath: basename(suggestedName),
        filters: [EXPORT_FILTERS[kind]],
      });
      if (canceled || filePath === '') return null;
      await writeWhole(filePath, bytes);
      return { name: basename(filePath) };
    }),
  );
  handle(parts, 'setUnsaved', ({ unsaved, title }) =>
    answered(async () => {
      parts.setUnsaved(unsaved, title);
      return null;
    }),
  );
}

/** One way in for all channels: checks who calls and what is said, in both directions, and rejects loudly. */
function handle<C extends ChannelName>(
  parts: HandlerParts,
  channel: C,
  work: (request: Request<C>) => Promise<Response<C>>,
): void {
  const { request: requestSchema, response: responseSchema } = CHANNELS[channel];
  parts.ipcMain.handle(channel, async (event, ...sent: unknown[]) => {
    if (!parts.isOwnPage(event)) throw new Error(`${channel}: refused, the call does not come from the app's own page`);
    const request = requestSchema.parse(sent[0]) as Request<C>;
    return responseSchema.parse(await work(request));
  });
}
