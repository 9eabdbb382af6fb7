import { z } from 'zod';

/** Largest document the program reads, bytes; said in the refusal. */
export const MAX_DOCUMENT_BYTES = 50_000_000;

/** An open document as the renderer knows it: an opaque handle, never a path. */
export const openedSchema = z.strictObject({ handle: z.string(), name: z.string(), text: z.string() });
export type Opened = z.infer<typeof openedSchema>;

export const savedSchema = z.strictObject({ handle: z.string(), name: z.string() });
export type Saved = z.infer<typeof savedSchema>;

const failure = z.strictObject({ ok: z.literal(false), message: z.string() });
const done = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion('ok', [z.strictObject({ ok: z.literal(true), value }), failure]);

/** What the renderer may ask of the machine. `null` is the user's own "cancel"; a failure carries a sentence to show. */
export const CHANNELS = {
  open: { request: z.null(), response: done(openedSchema.nullable()) },
  save: { request: z.strictObject({ handle: z.string(), text: z.string() }), response: done(savedSchema) },
  saveAs: {
    request: z.strictObject({ suggestedName: z.string(), text: z.string() }),
    response: done(savedSchema.nullable()),
  },
  exportFile: {
    request: z.strictObject({
      suggestedName: z.string(),
      kind: z.enum(['pdf', 'csv', 'svg', 'json']),
      bytes: z.instanceof(Uint8Array),
    }),
    response: done(z.strictObject({ name: z.string() }).nullable()),
  },
  setUnsaved: { request: z.strictObject({ unsaved: z.boolean(), title: z.string() }), response: done(z.null()) },
} as const;
export type ChannelName = keyof typeof CHANNELS;
export type Request<C extends ChannelName> = z.infer<(typeof CHANNELS)[C]['request']>;
export type Response<C extends ChannelName> = z.infer<(typeof CHANNELS)[C]['response']>;

/** Commands the menu sends to the renderer, one per entry that is not the system's own. */
export const MENU_COMMANDS = [
  'new',
  'open',
  'save',
  'saveAs',
  'exportPdf',
  'exportScheduleCsv',
  'exportLossesCsv',
  'exportSvg',
  'undo',
  'redo',
  'fit',
  'help',
] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** The machine as the renderer sees it; one implementation per host, all with the same promises. */
export interface Host {
  readonly kind: 'electron' | 'browser';
  open(): Promise<Response<'open'>>;
  save(request: Request<'save'>): Promise<Response<'save'>>;
  saveAs(request: Request<'saveAs'>): Promise<Response<'saveAs'>>;
  exportFile(request: Request<'exportFile'>): Promise<Response<'exportFile'>>;
  setUnsaved(request: Request<'setUnsaved'>): Promise<Response<'setUnsaved'>>;
  /** Menu entries and files opened from outside; each returns its own unsubscribe. */
  onMenu(listener: (command: MenuCommand) => void): () => void;
  onOpened(listener: (opened: Opened) => void): () => void;
}
