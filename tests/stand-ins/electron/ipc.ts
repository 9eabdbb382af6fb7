type Handler = (event: unknown, ...sent: unknown[]) => unknown;

const handlers = new Map<string, Handler>();

export const ipcMain = {
  handle(channel: string, handler: Handler): void {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
};

/** A call from a page, as `ipcRenderer.invoke` makes it. */
export async function invoke(channel: string, event: unknown, sent: readonly unknown[]): Promise<unknown> {
  const handler = handlers.get(channel);
  if (!handler) throw new Error(`No handler registered for '${channel}'`);
  return handler(event, ...sent);
}

/** Bytes as they cross between page and process, where everything else is JSON. */
interface Packed {
  readonly $bytes: string;
}

export const pack = (value: unknown): string =>
  JSON.stringify(value, (_key, part) =>
    part instanceof Uint8Array ? { $bytes: Buffer.from(part).toString('base64') } : part,
  ) ?? 'null';

export const unpack = (text: string): unknown =>
  JSON.parse(text, (_key, part: unknown) =>
    isPacked(part) ? new Uint8Array(Buffer.from(part.$bytes, 'base64')) : part,
  );

const isPacked = (part: unknown): part is Packed =>
  typeof part === 'object' && part !== null && '$bytes' in part && typeof part.$bytes === 'string';
