import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Rectangle } from 'electron';

/** Where a window was left. */
export interface Placement {
  readonly bounds: Rectangle;
  readonly isMaximised: boolean;
}

/** Of a remembered window at least this much of its upper edge must be on a screen, px, or it could not be dragged back. */
const GRIP = { width: 120, height: 40 };
/** Each further window opens this far from the one before it, px. */
const CASCADE_PX = 28;
export const SMALLEST = { width: 1000, height: 680 };

/**
 * The remembered bounds where they can still be seen on one of the screens there are now, else null.
 * @param workAreas of the screens, without task bars
 * @param nth how many windows are open already, each stepping a little aside
 */
export function boundsOn(remembered: Rectangle, workAreas: readonly Rectangle[], nth = 0): Rectangle | null {
  const step = nth * CASCADE_PX;
  const bounds = { ...remembered, x: remembered.x + step, y: remembered.y + step };
  const isGripped = workAreas.some((area) => {
    const across = Math.min(bounds.x + bounds.width, area.x + area.width) - Math.max(bounds.x, area.x);
    const down = area.y + area.height - bounds.y;
    return across >= GRIP.width && down >= GRIP.height && bounds.y >= area.y - GRIP.height / 2;
  });
  if (isGripped) return bounds;
  return nth > 0 ? boundsOn(remembered, workAreas) : null;
}

/** Reads where the last window was left; null when it was never kept or the file is not one of ours. */
export function readPlacement(path: string): Placement | null {
  try {
    const { bounds, isMaximised } = JSON.parse(readFileSync(path, 'utf8')) as Partial<Placement>;
    const { x, y, width, height } = bounds ?? {};
    if (!isWhole(x) || !isWhole(y) || !isWhole(width) || !isWhole(height)) return null;
    if (width < SMALLEST.width || height < SMALLEST.height) return null;
    return { bounds: { x, y, width, height }, isMaximised: isMaximised === true };
  } catch {
    return null;
  }
}

/** Keeps where a window was left; a disk that refuses it costs only the memory of it. */
export function writePlacement(path: string, placement: Placement): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, JSON.stringify(placement));
  } catch {
    // Not worth a word to the user.
  }
}

const isWhole = (value: unknown): value is number => Number.isSafeInteger(value) && Math.abs(value as number) < 100_000;
