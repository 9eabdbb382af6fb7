import type { Work } from './handlers.ts';
import { type Caller, type HandlerParts, nowOpen } from './parts.ts';

type RecoveryChannel = 'keepRecovery' | 'dropRecovery' | 'recoveries' | 'openRecovery' | 'discardRecovery';

/** Recovery copies. What another window has open is not up for recovery, and not this window's to touch. */
export function recoveryWork(parts: HandlerParts): Work<RecoveryChannel> {
  const { recovery, documents } = parts;
  const free = (caller: Caller, id: string): string => {
    if (parts.idsInUseBeside(caller).has(id)) throw new Error('This document is open in another window.');
    return id;
  };
  return {
    keepRecovery: async ({ documentId, handle, name, title, text }, caller) => {
      free(caller, documentId);
      nowOpen(caller, documentId);
      const own = handle !== null && caller.handles.has(handle) ? handle : null;
      const path = own === null ? null : (documents.pathOf(own) ?? null);
      const origin = own === null ? null : documents.stateOf(own);
      await recovery.keep({ documentId, path, origin, name, title, text });
      return null;
    },
    dropRecovery: async ({ documentId }, caller) => {
      await recovery.drop(free(caller, documentId));
      return null;
    },
    recoveries: async (_nothing, caller) => {
      const elsewhere = parts.idsInUseBeside(caller);
      return (await recovery.list()).filter(({ id }) => !elsewhere.has(id));
    },
    openRecovery: async ({ id }, caller) => {
      const { text, title, name, path, origin } = await recovery.read(free(caller, id));
      const handle = path === null ? null : documents.adopt(path, origin);
      if (handle !== null) caller.handles.add(handle);
      return { text, title, name, handle };
    },
    discardRecovery: async ({ id }, caller) => {
      await recovery.drop(free(caller, id));
      return null;
    },
  };
}
