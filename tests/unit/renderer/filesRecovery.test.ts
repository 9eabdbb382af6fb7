import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import type { Host, Request } from '../../../electron/contract.ts';
import { inOrder, keepRecoveryCopies, RECOVERY_DELAY_MS } from '../../../renderer/store/recovery.ts';
import { boat, fakeHost, freshStore, retitle } from './filesFixture.ts';

/** A keeper with a clock that goes only when told, and a host that remembers its copies. */
function kept(answer: Awaited<ReturnType<Host['keepRecovery']>> | Error = { ok: true, value: null }) {
  const store = freshStore();
  const copies = new Map<string, Request<'keepRecovery'>>();
  const waiting: { work: () => void; ms: number }[] = [];
  let keeps = 0;
  const keeper = keepRecoveryCopies(
    store,
    {
      keepRecovery: async (request) => {
        keeps += 1;
        if (answer instanceof Error) throw answer;
        if (answer.ok) copies.set(request.documentId, request);
        return answer;
      },
      dropRecovery: async ({ documentId }) => {
        copies.delete(documentId);
        return { ok: true, value: null };
      },
    },
    (work, ms) => {
      const entry = { work, ms };
      waiting.push(entry);
      return () => void waiting.splice(waiting.indexOf(entry), 1);
    },
  );
  const passTime = (): void => {
    for (const { work } of waiting.splice(0)) work();
  };
  return { store, copies, waiting, keeper, passTime, count: () => keeps };
}

describe('recovery copies', () => {
  it('keeps the work one second after a change, whole', () => {
    const { store, copies, waiting, passTime } = kept();
    retitle(store, 'Half done');
    expect(waiting.map(({ ms }) => ms)).toEqual([RECOVERY_DELAY_MS]);
    expect(RECOVERY_DELAY_MS).toBe(1000);
    passTime();
    const copy = copies.get(store.getState().documentId);
    expect(copy).toMatchObject({ title: 'Half done', name: '', handle: null });
    const loaded = parseProject(copy?.text ?? '');
    expect(loaded.ok && loaded.project).toEqual(store.getState().project);
  });

  it('does not put it off while changes go on, and writes only the last of them', () => {
    const { store, copies, waiting, passTime, count } = kept();
    for (let i = 0; i < 50; i += 1) retitle(store, `Change ${i}`);
    expect(waiting).toHaveLength(1);
    passTime();
    expect(count()).toBe(1);
    expect(copies.get(store.getState().documentId)?.title).toBe('Change 49');
    retitle(store, 'One more');
    passTime();
    expect(copies.get(store.getState().documentId)?.title).toBe('One more');
  });

  it('writes at once when the window is left, and nothing where nothing is new', () => {
    const { store, copies, keeper, waiting, count } = kept();
    keeper.flush();
    expect(count()).toBe(0);
    retitle(store, 'Left');
    keeper.flush();
    keeper.flush();
    expect(count()).toBe(1);
    expect(waiting).toEqual([]);
    expect(copies.size).toBe(1);
  });

  it('drops the copy once the work is saved, or undone to what is saved', () => {
    const { store, copies, passTime } = kept();
    retitle(store, 'Saved soon');
    passTime();
    expect(copies.size).toBe(1);
    const { project, markSaved } = store.getState();
    markSaved(project, { handle: 'h', name: 'boat.backstay', seenAt: '' });
    expect(copies.size).toBe(0);
    retitle(store, 'Undone soon');
    passTime();
    expect(copies.size).toBe(1);
    store.getState().undo();
    expect(copies.size).toBe(0);
  });

  it('keeps what was changed while a save was under way', () => {
    const { store, copies, passTime } = kept();
    retitle(store, 'Being saved');
    const { project, markSaved } = store.getState();
    retitle(store, 'Changed meanwhile');
    markSaved(project, { handle: 'h', name: 'boat.backstay', seenAt: '' });
    passTime();
    expect(copies.get(store.getState().documentId)).toMatchObject({
      title: 'Changed meanwhile',
      name: 'boat.backstay',
    });
  });

  it('does not write one document under the name of another', () => {
    const { store, copies, waiting } = kept();
    const first = store.getState().documentId;
    retitle(store, 'Given up');
    store.getState().openProject(boat('Other'), null);
    expect(waiting).toEqual([]);
    expect(copies.size).toBe(0);
    expect(store.getState().documentId).not.toBe(first);
  });

  it('knows that recovered work has a copy already, and drops that when it is saved', () => {
    const { store, copies, passTime, count } = kept();
    copies.set('old', { documentId: 'old', handle: null, name: '', title: '', text: '' });
    store.getState().openProject(boat('Found'), null, { documentId: 'old', isUnsaved: true });
    passTime();
    expect(count()).toBe(0);
    store.getState().markSaved(store.getState().project, { handle: 'h', name: 'n', seenAt: '' });
    expect(copies.size).toBe(0);
  });

  it('says once that no copy can be kept, and tries again with the next change', async () => {
    const { store, passTime, count } = kept({ ok: false, message: 'The disk is full.' });
    retitle(store, 'One');
    passTime();
    await Promise.resolve();
    expect(store.getState().message).toEqual({ tone: 'refusal', text: 'No recovery copy: The disk is full.' });
    retitle(store, 'Two');
    passTime();
    await Promise.resolve();
    expect(count()).toBe(2);
    expect(store.getState().message?.text).toBe('Title changed');
  });

  it('says once that no copy is kept where the machine fails at it, and takes none of it for kept', async () => {
    const { store, waiting, passTime, count } = kept(new Error('refused'));
    const said: string[] = [];
    store.subscribe(({ message }, before) => {
      if (message !== before.message && message?.tone === 'refusal') said.push(message.text);
    });
    retitle(store, 'One');
    passTime();
    await Promise.resolve();
    // A copy that is not there is tried again, even for the same state of the work.
    store.getState().setView({ openProgress: null });
    expect(waiting).toHaveLength(1);
    passTime();
    await Promise.resolve();
    expect(count()).toBe(2);
    expect(said).toEqual(['No recovery copy: the program did not take it. Save your work now.']);
  });

  it('never lets a drop overtake a keep that is slow', async () => {
    const done: string[] = [];
    let finish = (): void => {};
    const slow = new Promise<void>((resolve) => {
      finish = resolve;
    });
    const host = inOrder(
      fakeHost({
        keepRecovery: async () => {
          await slow;
          done.push('keep');
          return { ok: true, value: null };
        },
        dropRecovery: async () => {
          done.push('drop');
          return { ok: true, value: null };
        },
      }),
    );
    const both = [
      host.keepRecovery({ documentId: 'a', handle: null, name: '', title: '', text: '' }),
      host.dropRecovery({ documentId: 'a' }),
    ];
    finish();
    await Promise.all(both);
    expect(done).toEqual(['keep', 'drop']);
  });
});
