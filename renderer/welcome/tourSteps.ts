/** A stop of the tour: what it says, and the part of the screen it points at. */
export interface TourStep {
  readonly title: string;
  readonly text: string;
  /** CSS selector of the part pointed at. */
  readonly target: string;
}

/** The tour, short enough to be read through; each stop points at something that is always on the screen. */
export const TOUR_STEPS: readonly TourStep[] = [
  {
    title: 'The boat, to scale',
    text: 'A demo boat is open, so that there is something to try. Bow to the right, metres below. Drag what you like: every step can be undone, and nothing is saved unless you save it.',
    target: '.centre',
  },
  {
    title: 'Parts and the outline',
    text: 'Drag a part from here onto the boat, or find it by typing. The Outline tells the whole drawing in sentences; everything the pointer does has a key or a command as well.',
    target: '[aria-label="Parts and outline"]',
  },
  {
    title: 'Join what belongs together',
    text: 'Point at a part to see its sockets and drag from one to another. What fits is ringed; what does not says why. The run’s length follows its route.',
    target: '[data-area="drawing"]',
  },
  {
    title: 'Six pages of answers',
    text: 'What each cable loses, how far each radio reaches, what one failure takes away, and the sheet to build from. The question mark beside them opens the help on the page shown.',
    target: '.column--right .react-aria-TabList',
  },
  {
    title: 'Open remarks',
    text: 'A means safety, before use; B soon; C worth a note. Press here to read them. They are estimates for planning: local codes and a licensed installer govern.',
    target: '.status-findings',
  },
  {
    title: 'Your own boat',
    text: 'File makes a new boat and opens and saves documents. While you work a recovery copy is kept, one second behind you. This tour is under Help, whenever you want it again.',
    target: '[data-tour="menus"]',
  },
];

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const GAP_PX = 12;
/** Beside something tall the card hangs this far below its top, clear of headings. */
const BELOW_TOP_PX = 48;

/**
 * Where the card goes: beside what it points at, on the side with room, wholly inside the window. What fills most of the
 * window has no side with room; then the card sits in its lower corner, over as little as can be.
 */
export function cardPlace(target: Box, card: Size, window: Size): { readonly left: number; readonly top: number } {
  const right = target.left + target.width;
  const bottom = target.top + target.height;
  const clampX = (x: number): number => Math.max(GAP_PX, Math.min(x, window.width - card.width - GAP_PX));
  const clampY = (y: number): number => Math.max(GAP_PX, Math.min(y, window.height - card.height - GAP_PX));
  if (window.height - bottom >= card.height + 2 * GAP_PX) return { left: clampX(target.left), top: bottom + GAP_PX };
  if (target.top >= card.height + 2 * GAP_PX) {
    return { left: clampX(right - card.width), top: target.top - card.height - GAP_PX };
  }
  const top = clampY(target.top + BELOW_TOP_PX);
  if (window.width - right >= card.width + 2 * GAP_PX) return { left: right + GAP_PX, top };
  if (target.left >= card.width + 2 * GAP_PX) return { left: target.left - card.width - GAP_PX, top };
  return { left: clampX(target.left + GAP_PX), top: clampY(bottom - card.height - GAP_PX) };
}
