import { type RefObject, useLayoutEffect, useState } from 'react';

/** Room for the diagram and the size of its letters, px. */
export interface TreeSize {
  readonly width: number;
  readonly em: number;
  /** Height of what is seen of it at once. */
  readonly seenHeight: number;
}

const BEFORE_LAYOUT: TreeSize = { width: 380, em: 13, seenHeight: 500 };
/** Left free under the diagram, in heights of letters. */
const UNDER = 1;

/** Size of the diagram's frame, kept up with the panel's; letters are as large as the frame's own text. */
export function useTreeSize(frame: RefObject<HTMLElement | null>): TreeSize {
  const [size, setSize] = useState(BEFORE_LAYOUT);
  useLayoutEffect(() => {
    const element = frame.current;
    if (!element) return;
    const panel = scrolledAround(element);
    const measure = (): void => {
      const em = Number.parseFloat(getComputedStyle(element).fontSize) || BEFORE_LAYOUT.em;
      const width = element.clientWidth;
      const seenHeight = panel ? panel.clientHeight - topIn(panel, element) - UNDER * em : BEFORE_LAYOUT.seenHeight;
      if (width > 0) setSize((before) => (isSame(before, width, em, seenHeight) ? before : { width, em, seenHeight }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    if (panel) observer.observe(panel);
    return () => observer.disconnect();
  }, [frame]);
  return size;
}

const isSame = (size: TreeSize, width: number, em: number, seenHeight: number): boolean =>
  size.width === width && size.em === em && size.seenHeight === seenHeight;

/** How far down an element starts in what is scrolled. */
const topIn = (panel: HTMLElement, element: HTMLElement): number =>
  element.getBoundingClientRect().top - panel.getBoundingClientRect().top + panel.scrollTop;

/** The part of the page that scrolls the diagram up and down. */
function scrolledAround(element: HTMLElement): HTMLElement | null {
  let at = element.parentElement;
  while (at && !/auto|scroll/.test(getComputedStyle(at).overflowY)) at = at.parentElement;
  return at;
}
