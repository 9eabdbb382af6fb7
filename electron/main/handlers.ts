import type { IpcMainInvokeEvent } from 'electron';
import { CHANNELS, type ChannelName, type Request, type Response } from '../contract.ts';
import { answered } from '../node/documents.ts';
import { fileWork } from './fileWork.ts';
import type { Caller, HandlerParts } from './parts.ts';
import { recoveryWork } from './recoveryWork.ts';
import { shellWork } from './shellWork.ts';

/** What a channel's success carries. */
export type Value<C extends ChannelName> = Extract<Response<C>, { ok: true }>['value'];

/** The work of every channel: a value, or an Error whose message is a sentence for the user. */
export type Work<C extends ChannelName> = {
  readonly [K in C]: (request: Request<K>, caller: Caller) => Promise<Value<K>>;
};

/** Registers every channel of the contract. */
export function registerHandlers(parts: HandlerParts): void {
  const work: Work<ChannelName> = { ...fileWork(parts), ...recoveryWork(parts), ...shellWork(parts) };
  for (const channel of Object.keys(CHANNELS) as ChannelName[]) register(parts, work, channel);
}

const register = <C extends ChannelName>(parts: HandlerParts, work: Work<C>, channel: C): void =>
  handle(parts, channel, work[channel]);

/** One way in for all channels: checks who calls and what is said, in both directions, and rejects loudly. */
function handle<C extends ChannelName>(parts: HandlerParts, channel: C, work: Work<C>[C]): void {
  const { request: requestSchema, response: responseSchema } = CHANNELS[channel];
  parts.ipcMain.handle(channel, async (event: IpcMainInvokeEvent, ...sent: unknown[]) => {
    const caller = parts.callerOf(event);
    if (!caller) {
      parts.log('call-refused', { channel, why: 'sender' });
      throw new Error(`${channel}: refused, the call does not come from the app's own page`);
    }
    const request = requestSchema.safeParse(sent[0]);
    if (!request.success || sent.length !== 1) {
      parts.log('call-refused', { channel, why: 'shape' });
      throw new Error(`${channel}: refused, the request does not fit the contract`);
    }
    return responseSchema.parse(await answered(() => work(request.data as Request<C>, caller)));
  });
}
