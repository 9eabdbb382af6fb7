import { newProject } from '../../../core/model/defaults.ts';
import type { Project } from '../../../core/model/project.ts';
import type { Host, Opened } from '../../../electron/contract.ts';
import { loadPreferences } from '../../../renderer/store/preferences.ts';
import { type AppStore, createAppStore } from '../../../renderer/store/store.ts';

/** A small boat, by name. */
export const boat = (name: string): Project =>
  newProject({ name, kind: 'sloop', loaM: 11, beamM: 3.6, draughtM: 1.9, airDraughtM: 16.5, freeboardM: 1.1 });

export function freshStore(project: Project = boat('Tern')): AppStore {
  return createAppStore(project, loadPreferences({ getItem: () => null }));
}

/** Changes the title, as one undo step. */
export function retitle(store: AppStore, title: string): void {
  store.getState().edit('Title changed', (project) => ({ ...project, title }));
}

export const openedFile = (name: string, text: string): Opened => ({
  handle: `handle-${name}`,
  name,
  text,
  documentId: `id-${name}`,
  notes: [],
});

/** A host that writes down what it is asked, and answers as told; what is not told answers with nothing. */
export function fakeHost(answers: Partial<Host> = {}): Host & { readonly asked: string[] } {
  const asked: string[] = [];
  const nothing =
    (name: string) =>
    async (request?: object): Promise<{ ok: true; value: null }> => {
      asked.push(`${name} ${JSON.stringify(request ?? {}, (key, value) => (key === 'text' ? undefined : value))}`);
      return { ok: true, value: null };
    };
  const base = new Proxy(
    { asked, recents: async () => ({ ok: true, value: [] }), ...answers } as Record<string, unknown>,
    {
      get: (known, name) => known[String(name)] ?? nothing(String(name)),
    },
  );
  return base as unknown as Host & { readonly asked: string[] };
}
