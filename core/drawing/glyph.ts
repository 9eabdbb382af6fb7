import type { Port } from '../model/part.ts';
import type { Box, Point } from './geometry.ts';
import { textWidth } from './textWidth.ts';

/**
 * A symbol in its own units: 1 is a screen pixel at normal text size, the origin is where the item is, y down. Symbols
 * follow IEC 60617 where it has one (numbers from memory); what it lacks is a labelled box or a plain outline.
 */
export interface Glyph {
  readonly strokes: readonly Stroke[];
  readonly words: readonly { readonly text: string; readonly x: number; readonly y: number; readonly size: number }[];
  readonly box: Box;
  /** The part of the box a leader may end on, where something sticks out of it. */
  readonly body?: Box;
  /** Where each port is joined. */
  readonly ports: ReadonlyMap<string, Point>;
  /** Where the balloon's leader ends. */
  readonly dot: Point;
  /** Must stay exactly where the item is; the others may be moved aside a little when they crowd. */
  readonly fixed: boolean;
}

export interface Stroke {
  /** A path of M, L, A, Q, C, Z with absolute coordinates. */
  readonly d: string;
  readonly width: number;
  readonly fill: 'none' | 'paper' | 'ink';
  readonly dash?: readonly number[];
}

export const stroke = (d: string, width = 1.3, fill: Stroke['fill'] = 'none'): Stroke => ({ d, width, fill });

/** Circle as a path, so that every stroke scales the same way. */
export const ring = (x: number, y: number, r: number): string =>
  `M${x - r} ${y} A${r} ${r} 0 1 1 ${x + r} ${y} A${r} ${r} 0 1 1 ${x - r} ${y} Z`;

export const boxPath = ({ left, top, right, bottom }: Box): string =>
  `M${left} ${top} L${right} ${top} L${right} ${bottom} L${left} ${bottom} Z`;

export const LABEL_SIZE = 8.5;

/** A labelled box around the origin, as wide as its words need; `bar` sets a second line at its top, as on a transceiver. */
export function labelledBox(label: string, ports: readonly Port[], extra: readonly Stroke[] = []): Glyph {
  const rf = ports.filter((port) => port.medium === 'rf').length;
  const half = Math.max(10, (textWidth(label, LABEL_SIZE, true) + 7) / 2, rf * 3.5);
  const box: Box = { left: -half, right: half, top: -6.5, bottom: 6.5 };
  return {
    strokes: [stroke(boxPath(box), 1.3, 'paper'), ...extra],
    words: [{ text: label, x: 0, y: 3.1, size: LABEL_SIZE }],
    box,
    ports: portsAround(ports, box),
    dot: { x: 0, y: box.bottom },
    fixed: false,
  };
}

/** Antenna sockets along the top, DC terminals along the bottom, data ports down the side. */
export function portsAround(ports: readonly Port[], box: Box): ReadonlyMap<string, Point> {
  const places = new Map<string, Point>();
  const spread = (list: readonly Port[], at: (share: number) => Point): void => {
    list.forEach((port, index) => {
      places.set(port.id, at((index + 1) / (list.length + 1)));
    });
  };
  const width = box.right - box.left;
  const height = box.bottom - box.top;
  const of = (medium: Port['medium']): readonly Port[] => ports.filter((port) => port.medium === medium);
  spread(of('rf'), (share) => ({ x: box.left + share * width, y: box.top }));
  spread(of('dc'), (share) => ({ x: box.left + share * width, y: box.bottom }));
  spread(of('data'), (share) => ({ x: box.left, y: box.top + share * height }));
  return places;
}

interface Way {
  readonly fromPortId: string;
  readonly toPortId: string;
}

/** The sockets of an inline device that face an antenna: named so, or the one that every way through it shares. */
export function antennaSide(ports: readonly Port[], throughs: readonly Way[]): readonly Port[] {
  const rf = ports.filter((port) => port.medium === 'rf');
  const named = rf.filter((port) => /antenna/i.test(`${port.id} ${port.label}`));
  if (named.length > 0) return named;
  const uses = (id: string): number => throughs.filter((way) => way.fromPortId === id || way.toPortId === id).length;
  return [...rf].sort((a, b) => uses(b.id) - uses(a.id)).slice(0, 1);
}

/** Sockets of a device: those facing an antenna at its top, the others along its foot; supply to the right, data to the left. */
export function inlinePorts(ports: readonly Port[], throughs: readonly Way[], box: Box): ReadonlyMap<string, Point> {
  const places = new Map<string, Point>();
  const top = antennaSide(ports, throughs);
  const foot = ports.filter((port) => port.medium === 'rf' && !top.includes(port));
  const across = (row: readonly Port[], y: number): void => {
    row.forEach((port, index) => {
      const share = row.length === 1 ? 0.5 : index / (row.length - 1);
      places.set(port.id, { x: box.left + 2 + share * (box.right - box.left - 4), y });
    });
  };
  const down = (column: readonly Port[], x: number): void => {
    column.forEach((port, index) => {
      places.set(port.id, { x, y: box.top + ((index + 1) / (column.length + 1)) * (box.bottom - box.top) });
    });
  };
  across(top, box.top);
  across(foot, box.bottom);
  down(
    ports.filter((port) => port.medium === 'dc'),
    box.right,
  );
  down(
    ports.filter((port) => port.medium === 'data'),
    box.left,
  );
  return places;
}
