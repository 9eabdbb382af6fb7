import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Project, Subject } from '../../core/model/project.ts';
import { EMPTY_HISTORY, type History, recorded, redone, undone } from './history.ts';
import type { Preferences } from './preferences.ts';
import { INITIAL_VIEW, type ViewState } from './view.ts';

export const PANELS = [
  { id: 'particulars', name: 'Particulars' },
  { id: 'path-loss', name: 'Path loss' },
  { id: 'range', name: 'Range' },
  { id: 'redundancy', name: 'Redundancy' },
  { id: 'findings', name: 'Findings' },
  { id: 'sheet', name: 'Install sheet' },
] as const;
export type PanelId = (typeof PANELS)[number]['id'];

/** A sentence for the user in the status line; `refusal` when something could not be done and why. */
export interface Message {
  readonly tone: 'plain' | 'refusal';
  readonly text: string;
}

/** The file a document was read from or last saved to, as the host knows it. */
export interface DocumentFile {
  /** Empty where the host cannot write back to it. */
  readonly handle: string;
  readonly name: string;
  /** When it was last read or written here, ISO 8601. */
  readonly seenAt: string;
}

/** How a document is opened. */
export interface Opening {
  /** Its recovery copies go under this name; a new one when left out. */
  readonly documentId?: string;
  /** Work that was never saved, such as a recovery copy: it counts as unsaved from the start. */
  readonly isUnsaved?: boolean;
}

export interface AppState extends ViewState {
  /** Document tier: saved and undoable. */
  readonly project: Project;
  readonly history: History;
  /** The project as last saved or opened; unsaved when it is another object. */
  readonly savedProject: Project;
  readonly file: DocumentFile | null;
  /** Names this opening of the document, for its recovery copy. */
  readonly documentId: string;

  /** View tier: neither saved nor undoable. */
  readonly selection: readonly Subject[];
  readonly panel: PanelId;
  /** The failure event shown on the drawing; null for the intact boat. */
  readonly eventId: string | null;
  readonly preferences: Preferences;
  readonly message: Message | null;

  /** Transient tier: the project as it would be if the gesture under way ended now; null outside a gesture. */
  readonly preview: Project | null;
}

export interface AppActions {
  /** Applies an edit as one undo step. A `RefusedEdit` becomes a message and changes nothing. Returns whether it was done. */
  edit(label: string, change: (project: Project) => Project): boolean;
  /** Shows what an edit under way would give; always computed from the committed project. */
  previewEdit(change: (project: Project) => Project): void;
  /**
   * Ends a gesture: the preview becomes the project as one undo step (none if nothing was previewed). Edits in a row with
   * the same `mergeKey` share one step.
   */
  commitPreview(label: string, mergeKey?: string): void;
  cancelPreview(): void;
  undo(): void;
  redo(): void;
  select(subjects: readonly Subject[], mode?: 'replace' | 'toggle' | 'add'): void;
  showPanel(panel: PanelId): void;
  showEvent(eventId: string | null): void;
  setPreferences(change: Partial<Preferences>): void;
  setView(change: Partial<ViewState>): void;
  say(message: Message | null): void;
  /** Another document: history, selection and event start anew. */
  openProject(project: Project, file: AppState['file'], opening?: Opening): void;
  markSaved(project: Project, file: AppState['file']): void;
}

export type AppStore = StoreApi<AppState & AppActions>;

/** The project to show: the preview of a gesture under way, else the document. */
export const shownProject = (state: AppState): Project => state.preview ?? state.project;
export const isUnsaved = (state: AppState): boolean => state.project !== state.savedProject;

/** Makes the store. Nothing in it knows React, the canvas or the host. */
export function createAppStore(project: Project, preferences: Preferences): AppStore {
  return createStore<AppState & AppActions>()((set, get) => ({
    project,
    history: EMPTY_HISTORY,
    savedProject: project,
    file: null,
    documentId: crypto.randomUUID(),
    selection: [],
    panel: 'particulars',
    eventId: null,
    preferences,
    message: null,
    preview: null,
    ...INITIAL_VIEW,

    edit: (label, change) => {
      const before = get().project;
      const after = attempt(change, before, (text) => set({ message: { tone: 'refusal', text } }));
      if (!after) return false;
      if (after !== before) set(committed(get(), label, after));
      return true;
    },
    previewEdit: (change) => {
      const preview = attempt(change, get().project, (text) => set({ message: { tone: 'refusal', text } }));
      if (preview) set({ preview });
    },
    commitPreview: (label, mergeKey) => {
      const { preview, project: before } = get();
      if (preview && preview !== before) set(committed(get(), label, preview, mergeKey));
      else set({ preview: null });
    },
    cancelPreview: () => set({ preview: null }),
    undo: () => step(set, get, undone(get().history, get().project), 'Undone'),
    redo: () => step(set, get, redone(get().history, get().project), 'Redone'),
    select: (subjects, mode = 'replace') => set({ selection: selected(get().selection, subjects, mode) }),
    showPanel: (panel) => set({ panel }),
    showEvent: (eventId) => set({ eventId }),
    setPreferences: (change) => set({ preferences: { ...get().preferences, ...change } }),
    setView: (change) => set(change),
    say: (message) => set({ message }),
    openProject: (opened, file, opening = {}) =>
      set({
        project: opened,
        // Another object with the same content: unsaved is told by identity.
        savedProject: opening.isUnsaved ? { ...opened } : opened,
        file,
        documentId: opening.documentId ?? crypto.randomUUID(),
        isStarting: false,
        history: EMPTY_HISTORY,
        selection: [],
        eventId: null,
        preview: null,
        message: null,
        camera: null,
        fitCount: get().fitCount + 1,
        clipboard: [],
        sketch: null,
      }),
    markSaved: (saved, file) => set({ savedProject: saved, file }),
  }));
}

function attempt(
  change: (project: Project) => Project,
  project: Project,
  refuse: (text: string) => void,
): Project | null {
  try {
    return change(project);
  } catch (error) {
    // By name, so that the store needs no import from the edit layer for one class; anything else is a defect and surfaces.
    if (error instanceof Error && error.name === 'RefusedEdit') {
      refuse(error.message);
      return null;
    }
    throw error;
  }
}

function committed(state: AppState, label: string, after: Project, mergeKey?: string): Partial<AppState> {
  return {
    project: after,
    preview: null,
    history: recorded(state.history, label, state.project, mergeKey),
    selection: pruned(state.selection, after),
    message: { tone: 'plain', text: label },
  };
}

function step(
  set: (change: Partial<AppState>) => void,
  get: () => AppState,
  result: ReturnType<typeof undone>,
  word: string,
): void {
  if (!result) {
    set({ message: { tone: 'plain', text: word === 'Undone' ? 'Nothing to undo' : 'Nothing to redo' } });
    return;
  }
  set({
    project: result.project,
    history: result.history,
    preview: null,
    selection: pruned(get().selection, result.project),
    message: { tone: 'plain', text: `${word}: ${result.label}` },
  });
}

function selected(
  current: readonly Subject[],
  subjects: readonly Subject[],
  mode: 'replace' | 'toggle' | 'add',
): readonly Subject[] {
  if (mode === 'replace') return subjects;
  const rest = current.filter((known) => !subjects.some((subject) => isSame(known, subject)));
  const fresh =
    mode === 'toggle' ? subjects.filter((subject) => !current.some((known) => isSame(known, subject))) : subjects;
  return [...rest, ...fresh];
}

const isSame = (a: Subject, b: Subject): boolean => a.kind === b.kind && a.id === b.id;

/** The selection without what no longer exists. */
function pruned(selection: readonly Subject[], project: Project): readonly Subject[] {
  const known: Record<Subject['kind'], readonly { readonly id: string }[] | null> = {
    item: project.items,
    run: project.runs,
    feed: project.feeds,
    link: project.dataLinks,
    place: project.places,
    structure: [...project.boat.masts, ...project.boat.fittings],
    compartment: project.boat.compartments,
    boat: null,
  };
  const kept = selection.filter((subject) => known[subject.kind]?.some(({ id }) => id === subject.id) ?? true);
  return kept.length === selection.length ? selection : kept;
}
