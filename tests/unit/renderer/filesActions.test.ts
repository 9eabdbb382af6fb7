import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { serialiseProject } from '../../../core/document/save.ts';
import { setPicturesBeside, setUnderlayPicture } from '../../../core/edit/pictures.ts';
import type { Host, Response } from '../../../electron/contract.ts';
import { ACTIONS, actionsFor } from '../../../renderer/app/actions.ts';
import { MENUS, menuActionIds } from '../../../renderer/app/menus.ts';
import { openFile, openRecovered, showOpened } from '../../../renderer/app/openActions.ts';
import { saveFile } from '../../../renderer/app/saveActions.ts';
import { loadPreferences, savePreferences } from '../../../renderer/store/preferences.ts';
import type { Choice } from '../../../renderer/store/questions.ts';
import type { AppStore } from '../../../renderer/store/store.ts';
import { endTour } from '../../../renderer/welcome/endTour.ts';
import { boat, fakeHost, freshStore, openedFile, retitle } from './filesFixture.ts';

/** Answers each question as it comes, in order, and writes down which were asked. */
function answering(store: AppStore, ...choices: Choice[]): string[] {
  const asked: string[] = [];
  store.subscribe(({ question }, before) => {
    if (question === null || question === before.question) return;
    asked.push(question.question.kind);
    const choice = choices.shift();
    if (choice === undefined) throw new Error(`an unexpected question: ${question.question.kind}`);
    queueMicrotask(() => question.answer(choice));
  });
  return asked;
}

const theirs = serialiseProject(boat('Theirs'));
const saved = (name: string): Response<'save'> => ({ ok: true, value: { kind: 'saved', handle: `h-${name}`, name } });
const savedAs = (name: string): Response<'saveAs'> => ({ ok: true, value: { handle: `h-${name}`, name } });

/** A store whose document is on a file and has unsaved changes. */
function changedFile(): AppStore {
  const store = freshStore();
  store.getState().openProject(boat('Mine'), { handle: 'mine', name: 'mine.backstay', seenAt: '2026-05-01T10:00:00Z' });
  retitle(store, 'My changes');
  return store;
}

describe('opening', () => {
  it('asks nothing where nothing is lost, and lets go of the former document’s copy', async () => {
    const store = freshStore();
    const { documentId } = store.getState();
    const host = fakeHost();
    await showOpened(store, host, openedFile('theirs.backstay', theirs));
    expect(store.getState().project.boat.name).toBe('Theirs');
    expect(store.getState().documentId).toBe('id-theirs.backstay');
    expect(host.asked).toContain(`dropRecovery {"documentId":"${documentId}"}`);
  });

  it('keeps everything on Cancel, its recovery copy too', async () => {
    const store = changedFile();
    const host = fakeHost();
    const asked = answering(store, 'cancel');
    await showOpened(store, host, openedFile('theirs.backstay', theirs));
    expect(asked).toEqual(['unsaved']);
    expect(store.getState().project.title).toBe('My changes');
    expect(host.asked).toEqual([]);
  });

  it('saves first where that is wished, and stays when the save fails', async () => {
    const store = changedFile();
    const host = fakeHost({ save: async () => ({ ok: false, message: 'The disk is full.' }) });
    const asked = answering(store, 'save', 'cancel');
    await showOpened(store, host, openedFile('theirs.backstay', theirs));
    expect(asked).toEqual(['unsaved', 'save-failed']);
    expect(store.getState().project.title).toBe('My changes');

    const after = changedFile();
    answering(after, 'save');
    await showOpened(after, fakeHost({ save: async () => saved('mine.backstay') }), openedFile('t', theirs));
    expect(after.getState().project.boat.name).toBe('Theirs');
  });

  it('asks again about what was changed while the save ran', async () => {
    for (const choice of ['cancel', 'discard'] as const) {
      const store = changedFile();
      let finish = (): void => {};
      const slow = new Promise<void>((resolve) => {
        finish = resolve;
      });
      const host = fakeHost({ save: () => slow.then(() => saved('mine.backstay')) });
      const asked = answering(store, 'save', choice);
      const opening = showOpened(store, host, openedFile('theirs.backstay', theirs));
      await new Promise((resolve) => setTimeout(resolve, 1));
      retitle(store, 'Changed meanwhile');
      finish();
      await opening;
      expect(asked).toEqual(['unsaved', 'unsaved']);
      const { project } = store.getState();
      expect([project.title, project.boat.name]).toContain(choice === 'cancel' ? 'Changed meanwhile' : 'Theirs');
    }
  });

  it('does not ask about unsaved work for a file that cannot be opened, and loads nothing of it', async () => {
    const store = changedFile();
    answering(store);
    const before = store.getState().project;
    await showOpened(store, fakeHost(), openedFile('broken.backstay', theirs.slice(0, 200)));
    const { project, dialog, fileProblems } = store.getState();
    expect(project).toBe(before);
    expect(dialog).toBe('file-problems');
    expect(fileProblems).toMatchObject({ name: 'broken.backstay', handle: 'handle-broken.backstay' });
    expect(fileProblems?.readable.parts[0]?.[0]?.before).toBe('{');
  });

  it('clears the progress when the user has cancelled', async () => {
    const store = freshStore();
    store.getState().setView({ openProgress: { read: 1, size: 2 } });
    await openFile(store, fakeHost({ open: async () => ({ ok: true, value: null }) }));
    expect(store.getState().openProgress).toBeNull();
  });
});

describe('saving', () => {
  it('asks for a file where there is none yet', async () => {
    const store = freshStore();
    retitle(store, 'New');
    const host = fakeHost({ saveAs: async () => savedAs('new.backstay') });
    expect(await saveFile(store, host)).toBe(true);
    expect(store.getState().file).toMatchObject({ handle: 'h-new.backstay', name: 'new.backstay' });
    expect(store.getState().savedProject).toBe(store.getState().project);
  });

  it('tells what the machine has to say of a save', async () => {
    const store = changedFile();
    const notes = ['The version before could not be kept.'];
    const host = fakeHost({
      save: async () => ({ ok: true, value: { kind: 'saved', handle: 'h', name: 'n', notes } }),
    });
    await saveFile(store, host);
    expect(store.getState().message?.text).toBe('Saved n. The version before could not be kept.');
  });

  it('waits for a save under way instead of racing it', async () => {
    const store = changedFile();
    let saves = 0;
    const host = fakeHost({
      save: async () => {
        saves += 1;
        return saved('mine.backstay');
      },
    });
    expect(await Promise.all([saveFile(store, host), saveFile(store, host)])).toEqual([true, true]);
    expect(saves).toBe(1);
    retitle(store, 'Later');
    expect(await saveFile(store, host)).toBe(true);
    expect(saves).toBe(2);
  });

  it('never gives one document’s file to another that came while it was being saved', async () => {
    const store = changedFile();
    const host = fakeHost({
      save: async () => {
        store.getState().openProject(boat('Other'), null);
        return saved('mine.backstay');
      },
    });
    expect(await saveFile(store, host)).toBe(false);
    expect(store.getState().project.boat.name).toBe('Other');
    expect(store.getState().file).toBeNull();
  });

  it('is not saved when the user closes the save dialog', async () => {
    const store = freshStore();
    retitle(store, 'New');
    expect(await saveFile(store, fakeHost({ saveAs: async () => ({ ok: true, value: null }) }))).toBe(false);
    expect(store.getState().savedProject).not.toBe(store.getState().project);
  });

  it('keeps the work after a failure, and saves elsewhere where that is chosen', async () => {
    const store = changedFile();
    const asked = answering(store, 'again', 'save-as');
    const host = fakeHost({
      save: async () => ({ ok: false, message: 'The folder is read-only.' }),
      saveAs: async () => savedAs('elsewhere.backstay'),
    });
    expect(await saveFile(store, host)).toBe(true);
    expect(asked).toEqual(['save-failed', 'save-failed']);
    expect(store.getState().file?.name).toBe('elsewhere.backstay');
  });

  it('does not ask where to save again when only a picture could not be written', async () => {
    const bytes = readFileSync(new URL('../../../docs/pictures/range.png', import.meta.url));
    const withPicture = setUnderlayPicture(boat('Mine'), { name: 'side.png', bytes: new Uint8Array(bytes) });
    const store = freshStore();
    store.getState().openProject(setPicturesBeside(withPicture, true), null, { isUnsaved: true });
    const asked = answering(store, 'again', 'again');
    const done: string[] = [];
    const host = fakeHost({
      saveAs: async () => {
        done.push('saveAs');
        return savedAs('new.backstay');
      },
      keepBeside: async ({ handle }) => {
        done.push(handle);
        return done.length < 4 ? { ok: false, message: 'The disk is full.' } : { ok: true, value: null };
      },
    });
    expect(await saveFile(store, host)).toBe(true);
    expect(done).toEqual(['saveAs', 'h-new.backstay', 'h-new.backstay', 'h-new.backstay']);
    expect(asked).toEqual(['save-failed', 'save-failed']);
    expect(store.getState().file).toMatchObject({ handle: 'h-new.backstay' });
    expect(store.getState().savedProject).toBe(store.getState().project);
  });

  /** A host whose file someone else has changed, until it is overwritten. */
  const changedHost = (more: Partial<Host> = {}) =>
    fakeHost({
      save: async ({ overwrite }) =>
        overwrite
          ? saved('mine.backstay')
          : { ok: true, value: { kind: 'changed-on-disk', name: 'mine.backstay', modifiedAt: '2026-05-02T10:00:00Z' } },
      ...more,
    });

  it('never writes over what someone else wrote without being told to', async () => {
    const store = changedFile();
    const asked = answering(store, 'cancel', 'overwrite');
    expect(await saveFile(store, changedHost())).toBe(false);
    expect(store.getState().savedProject).not.toBe(store.getState().project);
    expect(await saveFile(store, changedHost())).toBe(true);
    expect(asked).toEqual(['changed-on-disk', 'changed-on-disk']);
  });

  it('opens theirs only after mine is in a recovery copy, which it leaves there', async () => {
    const store = changedFile();
    const { documentId } = store.getState();
    answering(store, 'theirs');
    const host = changedHost({
      recents: async () => ({
        ok: true,
        value: [
          { id: 'r1', name: 'mine.backstay', folder: 'boats', lastUsed: '', missing: false },
          { id: 'r2', name: 'other.backstay', folder: 'boats', lastUsed: '', missing: false },
        ],
      }),
      openRecent: async ({ id }) => ({ ok: true, value: openedFile(id, theirs) }),
    });
    expect(await saveFile(store, host)).toBe(false);
    expect(store.getState().project.boat.name).toBe('Theirs');
    expect(store.getState().file?.name).toBe('r1');
    expect(host.asked.filter((line) => line.includes(documentId))).toEqual([
      expect.stringMatching(/^keepRecovery .*"title":"My changes"/),
    ]);
  });

  it('stays with mine when it cannot be set aside', async () => {
    const store = changedFile();
    answering(store, 'theirs');
    const host = changedHost({ keepRecovery: async () => ({ ok: false, message: 'The disk is full.' }) });
    await saveFile(store, host);
    expect(store.getState().project.title).toBe('My changes');
    expect(store.getState().message?.text).toContain('The disk is full.');
  });

  it('leaves it to the user which file is meant when two have the name', async () => {
    const store = changedFile();
    answering(store, 'theirs');
    const entry = { name: 'mine.backstay', folder: '', lastUsed: '', missing: false };
    const host = changedHost({
      recents: async () => ({
        ok: true,
        value: [
          { ...entry, id: 'r1' },
          { ...entry, id: 'r2' },
        ],
      }),
    });
    await saveFile(store, host);
    expect(host.asked.some((line) => line.startsWith('openRecent'))).toBe(false);
    expect(host.asked).toContain('open {}');
  });
});

describe('recovered work', () => {
  it('opens as unsaved work on its file, under the name of its copy', async () => {
    const store = freshStore();
    const host = fakeHost({
      openRecovery: async () => ({
        ok: true,
        value: { text: theirs, title: 'Theirs', name: 'found.backstay', handle: 'h' },
      }),
    });
    expect(await openRecovered(store, host, 'copy-1')).toBe(true);
    const { project, savedProject, documentId, file } = store.getState();
    expect(project.boat.name).toBe('Theirs');
    expect(savedProject).not.toBe(project);
    expect(documentId).toBe('copy-1');
    expect(file).toMatchObject({ handle: 'h', name: 'found.backstay' });
    expect(host.asked.filter((line) => line.includes('copy-1'))).toEqual([]);
  });

  it('shows what is left of a copy that is damaged, and throws nothing away', async () => {
    const store = freshStore();
    const host = fakeHost({
      openRecovery: async () => ({ ok: true, value: { text: '{"format":', title: 'Half', name: '', handle: null } }),
    });
    expect(await openRecovered(store, host, 'copy-1')).toBe(false);
    expect(store.getState().fileProblems?.name).toBe('Half');
    expect(host.asked.some((line) => /Recovery/.test(line))).toBe(false);
  });
});

describe('menus and preferences', () => {
  it('has every action in a menu, once', () => {
    const inMenus = MENUS.flatMap(({ entries }) => menuActionIds(entries));
    expect([...inMenus].sort()).toEqual(ACTIONS.map(({ id }) => id).sort());
  });

  it('gives no chord to two actions that can answer at the same time', () => {
    const chords = ACTIONS.flatMap(({ keys }) => keys).filter((chord) => chord !== 'Escape');
    expect(new Set(chords).size).toBe(chords.length);
  });

  it('offers the log on the desktop only', () => {
    const ids = (kind: Host['kind']) => actionsFor({ kind }).map(({ id }) => id);
    expect(ids('electron')).toContain('show-log');
    expect(ids('browser')).not.toContain('show-log');
  });

  it('remembers that the tour was seen, and nothing of any document', () => {
    const kept = new Map<string, string>();
    const store = freshStore(boat('Secret Name'));
    store.getState().setView({ tourStep: 3 });
    endTour(store);
    savePreferences({ setItem: (key, value) => void kept.set(key, value) }, store.getState().preferences);
    expect(store.getState().tourStep).toBeNull();
    expect(loadPreferences({ getItem: (key) => kept.get(key) ?? null }).tourSeen).toBe(true);
    expect([...kept.values()].join()).not.toContain('Secret');
  });
});
