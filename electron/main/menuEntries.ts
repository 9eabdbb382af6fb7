/** An entry that performs one of the page's actions: its id, its name and its chord are the action's own. A test compares. */
export interface MenuEntry {
  readonly command: string;
  readonly label: string;
  /** As the page writes chords, e.g. `Mod+Shift+Z`; the page itself answers to the keys. */
  readonly chord?: string;
}

const entry = (command: string, label: string, chord?: string): MenuEntry => ({
  command,
  label,
  ...(chord === undefined ? {} : { chord }),
});

/** Opens a window without asking the page, because there may be none. */
export const NEW_WINDOW = entry('new-window', 'New window', 'Mod+Shift+N');

export const NEW_AND_OPEN = [entry('new-boat', 'New boat…', 'Mod+Alt+N'), entry('open', 'Open…', 'Mod+O')] as const;

export const DEMOS = [
  entry('demo-brannoch-tern', 'Open demo: Brannoch Tern, steel ketch, owner refit'),
  entry('demo-pelluna', 'Open demo: Pelluna, aluminium trawler, electrician’s quote'),
  entry('demo-vessarine', 'Open demo: Vessarine, catamaran, survey before a passage'),
] as const;

export const SAVE = [entry('save', 'Save', 'Mod+S'), entry('save-as', 'Save as…', 'Mod+Shift+S')] as const;
export const RECOVERIES = [entry('recoveries', 'Recovered work…')] as const;

export const EXPORTS = [
  entry('export-pdf', 'Install sheet, PDF', 'Mod+E'),
  entry('export-schedule', 'Cable schedule, CSV'),
  entry('export-losses', 'Path losses, CSV'),
  entry('export-svg', 'Drawing, SVG'),
] as const;

export const UNDO = [entry('undo', 'Undo', 'Mod+Z'), entry('redo', 'Redo', 'Mod+Shift+Z')] as const;
export const COPY = [
  entry('copy', 'Copy', 'Mod+C'),
  entry('paste', 'Paste', 'Mod+V'),
  entry('duplicate', 'Duplicate', 'Mod+D'),
  entry('delete', 'Delete', 'Delete'),
] as const;
export const SELECT = [
  entry('select-all', 'Select all items', 'Mod+A'),
  entry('deselect', 'Select nothing', 'Escape'),
] as const;

const DIRECTIONS = [
  ['towards the stern', 'ArrowLeft'],
  ['towards the bow', 'ArrowRight'],
  ['up', 'ArrowUp'],
  ['down', 'ArrowDown'],
] as const;
export const MOVES = DIRECTIONS.flatMap(([direction, key]) => [
  entry(`move-${direction}-1`, `Move ${direction}`, key),
  entry(`move-${direction}-5`, `Move ${direction}, 5 steps`, `Shift+${key}`),
]);

export const DRAW = [
  entry('add-part', 'Add a part…', 'A'),
  entry('connect', 'Connect…', 'C'),
  entry('insert', 'Insert into run…', 'I'),
  entry('route', 'Edit route…', 'R'),
  entry('own-part', 'Add your own part…'),
  entry('keep-copy', 'Keep a copy of this layout as…'),
] as const;

export const DRAWING = [
  entry('fit', 'Fit the whole boat', 'F'),
  entry('zoom-in', 'Zoom in', 'Plus'),
  entry('zoom-out', 'Zoom out', 'Minus'),
  entry('plan', 'Show or hide the plan view', 'P'),
  entry('intact', 'Show the intact boat', 'Escape'),
] as const;

export const PANELS = [
  entry('panel-particulars', 'Show Particulars', 'Alt+1'),
  entry('panel-path-loss', 'Show Path loss', 'Alt+2'),
  entry('panel-range', 'Show Range', 'Alt+3'),
  entry('panel-redundancy', 'Show Redundancy', 'Alt+4'),
  entry('panel-findings', 'Show Findings', 'Alt+5'),
  entry('panel-sheet', 'Show Install sheet', 'Alt+6'),
] as const;

export const REDUNDANCY_VIEWS = [
  entry('redundancy-one', 'Show Redundancy: One failure'),
  entry('redundancy-help', 'Show Redundancy: What would help'),
  entry('redundancy-several', 'Show Redundancy: Two or three'),
  entry('redundancy-chances', 'Show Redundancy: Chances'),
  entry('redundancy-tree', 'Show Redundancy: Tree'),
  entry('redundancy-raft', 'Show Redundancy: To the raft'),
  entry('redundancy-rules', 'Show Redundancy: Rules'),
] as const;

export const AREAS = [
  entry('parts-list', 'Go to the Parts list', 'Alt+P'),
  entry('outline', 'Go to the Outline', 'Alt+O'),
  entry('drawing', 'Go to the drawing', 'Alt+D'),
] as const;

export const FIND = [entry('palette', 'Find a command…', 'Mod+K')] as const;
export const SETTINGS = [entry('settings', 'Settings…', 'Mod+,')] as const;
export const HELP = [
  entry('help', 'Help', 'F1'),
  entry('help-page', 'Help on this page', 'Shift+F1'),
  entry('tour', 'Take the tour'),
] as const;
export const LOG = [entry('show-log', 'Show the log file')] as const;
export const ABOUT = [entry('about', 'About Backstay')] as const;
export const PRINT = [entry('print', 'Print the install sheet…', 'Mod+P')] as const;
