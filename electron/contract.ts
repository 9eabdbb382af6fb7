import { z } from 'zod';
import { PICTURE_BYTES, PICTURE_FILE_NAME } from '../core/model/picture.ts';

/** Largest document the program reads, bytes; said in the refusal. */
export const MAX_DOCUMENT_BYTES = 50_000_000;
/** Largest file the page may have exported or printed, bytes. */
export const MAX_EXPORT_BYTES = 200_000_000;

/** Nothing to say with this request. */
const nothing = z.strictObject({});
const documentText = z.string().max(MAX_DOCUMENT_BYTES);
const fileName = z.string().max(1000);
/** No path can be written with these letters. */
const pictureFile = z.string().regex(PICTURE_FILE_NAME);
const title = z.string().max(MAX_DOCUMENT_BYTES);
/** A name the machine gave to a file or a recovery copy; never a path. */
const handle = z.string().max(200);
const documentId = z.string().regex(/^[A-Za-z0-9-]{1,64}$/);

/**
 * An open document as the page knows it: an opaque handle, never a path. `documentId` names this opening of it, for its
 * recovery copy; `notes` are sentences for the user, such as that the file is read-only.
 */
export const openedSchema = z.strictObject({
  handle: z.string(),
  name: z.string(),
  text: z.string(),
  documentId: z.string(),
  notes: z.array(z.string()),
});
export type Opened = z.infer<typeof openedSchema>;

/** Sentences for the user about a save that succeeded, such as that the version before could not be kept. */
const notes = z.array(z.string()).readonly().optional();

export const savedSchema = z.strictObject({ handle: z.string(), name: z.string(), notes });
export type Saved = z.infer<typeof savedSchema>;

/** Saving over a document: done, or refused because the file is no longer what was opened or last saved here. */
export const savedOrChangedSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('saved'), handle: z.string(), name: z.string(), notes }),
  z.strictObject({ kind: z.literal('changed-on-disk'), name: z.string(), modifiedAt: z.string() }),
]);
export type SavedOrChanged = z.infer<typeof savedOrChangedSchema>;

/**
 * A file used before. `folder` is its folder's name, to tell two of one name apart; `missing`: it is not there now, such
 * as on a drive that is not in. Instants are ISO 8601 throughout.
 */
export const recentFileSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  folder: z.string(),
  lastUsed: z.string(),
  missing: z.boolean(),
});
export type RecentFile = z.infer<typeof recentFileSchema>;

/** A recovery copy there is: of what, from when, and in a sentence what it holds. */
export const recoverySchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  name: z.string(),
  keptAt: z.string(),
  bytes: z.number(),
  summary: z.string(),
});
export type Recovery = z.infer<typeof recoverySchema>;

export const recoveredSchema = z.strictObject({
  text: z.string(),
  title: z.string(),
  name: z.string(),
  handle: z.string().nullable(),
});
export type Recovered = z.infer<typeof recoveredSchema>;

/** Bytes read so far of a large file, and its whole size. */
export const progressSchema = z.strictObject({ read: z.number(), size: z.number() });
export type OpenProgress = z.infer<typeof progressSchema>;

/** The program and what it runs on; `electron` and `chromium` are empty where there is none. */
export const aboutSchema = z.strictObject({ version: z.string(), electron: z.string(), chromium: z.string() });
export type About = z.infer<typeof aboutSchema>;

/** What the system's own editing commands do to the text field that has the focus. */
export const TEXT_COMMANDS = ['undo', 'redo', 'copy', 'paste', 'delete', 'select-all'] as const;
export type TextCommand = (typeof TEXT_COMMANDS)[number];

const failure = z.strictObject({ ok: z.literal(false), message: z.string() });
const done = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion('ok', [z.strictObject({ ok: z.literal(true), value }), failure]);

/** What the page may ask of the machine. `null` is the user's own "cancel"; a failure carries a sentence to show. */
export const CHANNELS = {
  open: { request: nothing, response: done(openedSchema.nullable()) },
  /** Only the preload may fill in the path: the page hands over the dropped file itself. */
  openDropped: { request: z.strictObject({ path: z.string().max(32_768) }), response: done(openedSchema.nullable()) },
  openRecent: { request: z.strictObject({ id: handle }), response: done(openedSchema.nullable()) },
  cancelOpen: { request: nothing, response: done(z.null()) },
  recents: { request: nothing, response: done(z.array(recentFileSchema)) },
  forgetRecents: { request: nothing, response: done(z.null()) },
  /** Copies a file that cannot be read beside itself; answers with the copy's name. */
  setAside: { request: z.strictObject({ handle }), response: done(z.strictObject({ name: z.string() })) },
  save: {
    request: z.strictObject({ handle, text: documentText, overwrite: z.boolean() }),
    response: done(savedOrChangedSchema),
  },
  saveAs: {
    request: z.strictObject({ suggestedName: fileName, text: documentText }),
    response: done(savedSchema.nullable()),
  },
  /** A picture's file in the folder beside a document, by a name the document gives it; null where there is none. */
  readBeside: {
    request: z.strictObject({ handle, fileName: pictureFile }),
    response: done(z.instanceof(Uint8Array).nullable()),
  },
  keepBeside: {
    request: z.strictObject({
      handle,
      fileName: pictureFile,
      bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength <= PICTURE_BYTES, 'too large'),
    }),
    response: done(z.null()),
  },
  exportFile: {
    request: z.strictObject({
      suggestedName: fileName,
      kind: z.enum(['pdf', 'csv', 'svg', 'json']),
      bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength <= MAX_EXPORT_BYTES, 'too large'),
    }),
    response: done(z.strictObject({ name: z.string() }).nullable()),
  },
  /** Hands a PDF to the system's viewer, which prints it on the user's own printer. */
  print: {
    request: z.strictObject({
      suggestedName: fileName,
      bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength <= MAX_EXPORT_BYTES, 'too large'),
    }),
    response: done(z.strictObject({ name: z.string() })),
  },
  keepRecovery: {
    request: z.strictObject({ documentId, handle: handle.nullable(), name: fileName, title, text: documentText }),
    response: done(z.null()),
  },
  dropRecovery: { request: z.strictObject({ documentId }), response: done(z.null()) },
  recoveries: { request: nothing, response: done(z.array(recoverySchema)) },
  openRecovery: { request: z.strictObject({ id: handle }), response: done(recoveredSchema) },
  discardRecovery: { request: z.strictObject({ id: handle }), response: done(z.null()) },
  setUnsaved: { request: z.strictObject({ unsaved: z.boolean(), title }), response: done(z.null()) },
  newWindow: { request: nothing, response: done(z.null()) },
  /** Opens an https address in the system's browser after the user has agreed; answers whether it was opened. */
  openExternal: { request: z.strictObject({ url: z.string().max(2000) }), response: done(z.boolean()) },
  about: { request: nothing, response: done(aboutSchema) },
  showLog: { request: nothing, response: done(z.null()) },
  /** Lets the text field that has the focus do what a menu entry says. */
  editText: { request: z.strictObject({ command: z.enum(TEXT_COMMANDS) }), response: done(z.null()) },
} as const;
export type ChannelName = keyof typeof CHANNELS;
export type Request<C extends ChannelName> = z.infer<(typeof CHANNELS)[C]['request']>;
export type Response<C extends ChannelName> = z.infer<(typeof CHANNELS)[C]['response']>;

/** Commands the menu sends to the page: the ids of the page's actions. A test holds menu and actions together. */
export const menuCommandSchema = z.string().regex(/^[a-z0-9][A-Za-z0-9 :-]{0,99}$/);
/** An action's id, or `recent:` and the id of a file used before. */
export type MenuCommand = z.infer<typeof menuCommandSchema>;
export const RECENT_COMMAND = 'recent:';

/** What was dropped on the page: the browser's own `DataTransfer`, of which a host opens the first file. */
export interface Drop {
  readonly files: ArrayLike<object>;
}

/** What the shell tells the page; each returns its own unsubscribe. */
interface HostEvents {
  onMenu(listener: (command: MenuCommand) => void): () => void;
  /** A file opened from outside: the file manager, or a second start. */
  onOpened(listener: (opened: Opened) => void): () => void;
  onProgress(listener: (progress: OpenProgress) => void): () => void;
}

type Ask<C extends ChannelName> =
  Request<C> extends Record<string, never> ? () => Promise<Response<C>> : (request: Request<C>) => Promise<Response<C>>;
/** Channels the page has no name for: the host itself uses them. */
type Inner = 'openDropped' | 'editText';
type Asks = { readonly [C in Exclude<ChannelName, Inner>]: Ask<C> };

/** The machine as the page sees it; one implementation per host, all with the same promises. */
export interface Host extends Asks, HostEvents {
  readonly kind: 'electron' | 'browser';
  openDropped(drop: Drop): Promise<Response<'openDropped'>>;
}

/** What the preload exposes: named functions and nothing else. Its answers are checked again in the page. */
export interface Bridge extends Asks, HostEvents {
  readonly kind: 'electron';
  /** Opens a dropped `File`; the preload learns its path from the system, the page never does. */
  openDropped(file: object): Promise<Response<'openDropped'>>;
  editText(request: Request<'editText'>): Promise<Response<'editText'>>;
}
