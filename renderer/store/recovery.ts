import { serialiseProject } from '../../core/document/save.ts';
import type { Project } from '../../core/model/project.ts';
import type { Host, Request } from '../../electron/contract.ts';
import { type AppState, type AppStore, isUnsaved } from './store.ts';

/** How long after a change its recovery copy is written, ms. */
export const RECOVERY_DELAY_MS = 1000;

type RecoveryHost = Pick<Host, 'keepRecovery' | 'dropRecovery'>;

export interface RecoveryKeeper {
  /** Writes what is not yet kept at once: the window is losing the focus, or is about to go. */
  flush(): void;
}

/** What a recovery copy says of the document as it stands. */
export function recoveryEntry(state: AppState): Request<'keepRecovery'> {
  return {
    documentId: state.documentId,
    handle: state.file?.handle || null,
    name: state.file?.name ?? '',
    title: state.project.title,
    text: serialiseProject(state.project),
  };
}

/**
 * Keeps a recovery copy of unsaved work: written one second after the first change that is not in it, so that a run of
 * quick changes never waits longer; dropped once the work is saved or undone back to what is saved.
 * @param later runs work after so many milliseconds; returns how to call it off
 */
export function keepRecoveryCopies(
  store: AppStore,
  host: RecoveryHost,
  later: (work: () => void, ms: number) => () => void,
): RecoveryKeeper {
  let kept: Project | null = null;
  let hasCopy = false;
  let hasComplained = false;
  let callOff: (() => void) | null = null;

  const rest = (): void => {
    callOff?.();
    callOff = null;
  };
  const notKept = (reason: string): void => {
    kept = null;
    // Once, not after every change: the disk will not mend while the user reads.
    if (!hasComplained) store.getState().say({ tone: 'refusal', text: `No recovery copy: ${reason}` });
    hasComplained = true;
  };
  const flush = (): void => {
    rest();
    const state = store.getState();
    if (!isUnsaved(state) || state.project === kept) return;
    kept = state.project;
    hasCopy = true;
    void host.keepRecovery(recoveryEntry(state)).then(
      (answer) => {
        if (answer.ok) hasComplained = false;
        else notKept(answer.message);
      },
      () => notKept('the program did not take it. Save your work now.'),
    );
  };
  store.subscribe((state, before) => {
    if (state.documentId !== before.documentId) {
      rest();
      // A document that is unsaved as it is opened comes from its own recovery copy.
      hasCopy = isUnsaved(state);
      kept = hasCopy ? state.project : null;
    } else if (!isUnsaved(state)) {
      rest();
      if (hasCopy) void host.dropRecovery({ documentId: state.documentId });
      hasCopy = false;
      kept = null;
    } else if (state.project !== kept && callOff === null) {
      callOff = later(flush, RECOVERY_DELAY_MS);
    }
  });
  return { flush };
}

/** The same host, with keeping and dropping of copies done strictly in the order asked: a drop never overtakes a keep. */
export function inOrder(host: Host): Host {
  let last: Promise<unknown> = Promise.resolve();
  const queued = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work, work);
    last = next;
    return next;
  };
  return {
    ...host,
    keepRecovery: (request) => queued(() => host.keepRecovery(request)),
    dropRecovery: (request) => queued(() => host.dropRecovery(request)),
    recoveries: () => queued(() => host.recoveries()),
  };
}
