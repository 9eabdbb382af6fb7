import type { Projection } from '../../core/drawing/types.ts';
import type { Endpoint } from '../../core/model/project.ts';
import type { OpenProgress, RecentFile, Recovery } from '../../electron/contract.ts';
import type { OpenQuestion } from './questions.ts';
import type { ReadableText } from './readable.ts';

/** Pages of the Redundancy panel. */
export const REDUNDANCY_VIEWS = [
  { id: 'one', name: 'One failure' },
  { id: 'help', name: 'What would help' },
  { id: 'several', name: 'Two or three' },
  { id: 'chances', name: 'Chances' },
  { id: 'tree', name: 'Tree' },
  { id: 'raft', name: 'To the raft' },
  { id: 'rules', name: 'Rules' },
] as const;
export type RedundancyViewId = (typeof REDUNDANCY_VIEWS)[number]['id'];

/** What the drawing is centred on, in boat metres, and how large, px per metre. */
export interface Camera {
  readonly xM: number;
  readonly zM: number;
  readonly scale: number;
}

/** Dialogs of which one at most is open. */
export type DialogId =
  | 'new-boat'
  | 'own-part'
  | 'settings'
  | 'connect'
  | 'insert'
  | 'route'
  | 'add-part'
  | 'keep-copy'
  | 'palette'
  | 'help'
  | 'about'
  | 'recoveries'
  | 'file-problems';

/** A file that was not opened: what is wrong in it, and whatever of it can be read. */
export interface FileProblems {
  readonly name: string;
  /** Handle of the file, empty where it came without one and so cannot be copied aside. */
  readonly handle: string;
  readonly sentences: readonly string[];
  readonly readable: ReadableText;
}

export interface PointPx {
  readonly x: number;
  readonly y: number;
}

/** What a gesture under way draws over the sheet, px of the sheet. */
export interface Sketch {
  readonly marquee?: { readonly from: PointPx; readonly to: PointPx };
  readonly line?: { readonly from: PointPx; readonly to: PointPx; readonly fits: boolean };
  /** A place a part or bend would snap to. */
  readonly snap?: { readonly at: PointPx; readonly name: string };
  /** A sentence at the pointer: what would happen, or why it cannot. */
  readonly tip?: { readonly at: PointPx; readonly text: string; readonly refusal: boolean };
  /** Ports a new run may end on, while one is being drawn. */
  readonly targets?: readonly {
    readonly endpoint: Endpoint;
    readonly at: PointPx;
    readonly fits: boolean;
    readonly reason: string;
  }[];
}

/** View tier that the shell and the drawing share: neither saved nor undoable. */
export interface ViewState {
  readonly dialog: DialogId | null;
  readonly leftTab: 'parts' | 'outline';
  /** Null fits the whole boat into the sheet. */
  readonly camera: Camera | null;
  /** What the sheet shows now, as it says itself; null until it is laid out. */
  readonly sheet: {
    readonly projection: Projection;
    readonly size: { readonly width: number; readonly height: number };
  } | null;
  readonly isPlanShown: boolean;
  /** Counts the times the boat was fitted anew; between them the sheet stays put, whatever is moved on it. */
  readonly fitCount: number;
  /** Where the pointer is over the drawing, boat metres. */
  readonly pointer: { readonly xM: number; readonly zM: number } | null;
  /** The bend last pressed, of a selected run: Delete takes it out. */
  readonly bend: { readonly runId: string; readonly index: number } | null;
  /** Ids of copied items. */
  readonly clipboard: readonly string[];
  /** Part chosen in the Parts list, for adding by keyboard. */
  readonly partId: string | null;
  readonly sketch: Sketch | null;
  readonly redundancyView: RedundancyViewId;
  /** Far end the reaches of what is left are quoted to; null for the usual one. */
  readonly farEndId: string | null;
  readonly fileProblems: FileProblems | null;
  /** What the program is asking, over any dialog; null when nothing. */
  readonly question: OpenQuestion | null;
  /** Recovery copies there are, as last heard. */
  readonly recoveries: readonly Recovery[];
  /** Files used before, newest first, as last heard. */
  readonly recents: readonly RecentFile[];
  /** How far the reading of a large file has come; null when none is being read. */
  readonly openProgress: OpenProgress | null;
  /** Page of the help shown or last shown. */
  readonly helpPage: string | null;
  /** A start without a document, until one is opened or the user says otherwise. */
  readonly isStarting: boolean;
  /** Stop of the tour shown, from 0; null when the tour is not on. */
  readonly tourStep: number | null;
}

export const INITIAL_VIEW: ViewState = {
  dialog: null,
  leftTab: 'parts',
  camera: null,
  sheet: null,
  isPlanShown: true,
  fitCount: 0,
  pointer: null,
  bend: null,
  clipboard: [],
  partId: null,
  sketch: null,
  redundancyView: 'one',
  farEndId: null,
  fileProblems: null,
  question: null,
  recoveries: [],
  recents: [],
  openProgress: null,
  helpPage: null,
  isStarting: false,
  tourStep: null,
};
