import type { AntennaClass, PartOf, Port } from '../model/part.ts';
import type { Point } from './geometry.ts';
import { type Glyph, LABEL_SIZE, ring, type Stroke, stroke } from './glyph.ts';

/**
 * Symbol of an antenna standing on its base at the origin. Rods are drawn to their length.
 * @param lengthPx its length to scale, in symbol units
 */
export function antennaGlyph(part: PartOf<'antenna'>, lengthPx: number): Glyph {
  switch (part.antennaClass) {
    case 'gnss':
      return dome(part.ports, 6, 5, 'GNSS');
    case 'l-band':
      return dome(part.ports, 5.5, 9, '');
    case 'dome':
      return radome(part.ports);
    default:
      return rod(part, part.antennaClass, Math.max(17, lengthPx));
  }
}

/** Antenna, general (S01102): a rod with two arms spread at its top; a mark on the rod tells the kinds apart. */
function rod(part: PartOf<'antenna'>, kind: AntennaClass, length: number): Glyph {
  const top = -length;
  const fork = top + 9;
  const strokes: Stroke[] = [
    stroke(`M0 0 L0 ${top}`, 1.6),
    stroke(`M-6 ${top} L0 ${fork} L6 ${top}`, 1.2),
    stroke('M-2.2 0 L2.2 0 L2.2 -3.4 L-2.2 -3.4 Z', 1, 'ink'),
    ...rodMark(kind, length),
  ];
  return {
    strokes,
    words: [],
    box: { left: -7, right: 7, top: top - 1, bottom: 1.5 },
    ports: atBase(part.ports),
    dot: { x: 0, y: -length * 0.5 },
    fixed: true,
  };
}

function rodMark(kind: AntennaClass, length: number): readonly Stroke[] {
  const middle = -length * 0.42;
  switch (kind) {
    case 'vhf-collinear':
      // A phasing stub between the stacked elements.
      return [stroke(`M0 ${middle + 2.5} L3.4 ${middle + 2.5} L3.4 ${middle - 2.5} L0 ${middle - 2.5}`, 1)];
    case 'hf-whip':
      return [stroke(`M0 -5 Q4 -6 0 -7.5 Q4 -8.5 0 -10 Q4 -11 0 -12.5`, 1.1)];
    case 'cellular':
      return [stroke(`M8.5 ${-length + 1} A9 9 0 0 1 8.5 ${-length + 9}`, 0.9)];
    case 'wifi':
      return [
        stroke(`M8.5 ${-length + 1} A9 9 0 0 1 8.5 ${-length + 9}`, 0.9),
        stroke(`M11.5 ${-length - 1} A13 13 0 0 1 11.5 ${-length + 11}`, 0.9),
      ];
    case 'navtex':
      return [stroke(ring(0, middle, 3), 1, 'paper')];
    case 'vhf-emergency':
      return [stroke(`M-3 ${middle + 2} L3 ${middle - 2}`, 1), stroke(`M-3 ${middle + 5} L3 ${middle + 1}`, 1)];
    default:
      return [];
  }
}

/** Half dome on a stub; the crescent over it stands for what looks at the sky. */
function dome(ports: readonly Port[], r: number, height: number, word: string): Glyph {
  const top = -4 - height;
  const strokes: Stroke[] = [
    stroke('M0 0 L0 -4', 1.4),
    stroke(`M${-r} -4 C${-r} ${top + 0.5} ${r} ${top + 0.5} ${r} -4 Z`, 1.3, 'paper'),
    stroke(`M${-r * 0.8} ${top - 0.5} Q0 ${top - 5.5} ${r * 0.8} ${top - 0.5}`, 1),
  ];
  return {
    strokes,
    words: word === '' ? [] : [{ text: word, x: r + 2, y: -5, size: LABEL_SIZE - 1.5 }],
    box: { left: -r - 1, right: word === '' ? r + 1 : r + 16, top: top - 4, bottom: 1 },
    ports: atBase(ports),
    dot: { x: -r * 0.5, y: -5.5 },
    fixed: true,
  };
}

/** A stabilised dish under its radome. */
function radome(ports: readonly Port[]): Glyph {
  const strokes: Stroke[] = [
    stroke('M-4 0 L4 0 L3 -4 L-3 -4 Z', 1.2, 'paper'),
    stroke('M-8 -4 L-8 -9 C-8 -19 8 -19 8 -9 L8 -4 Z', 1.4, 'paper'),
    stroke('M-4.5 -12.5 A7 7 0 0 0 4 -7.5', 1.2),
    stroke('M-0.5 -9.5 L3.2 -12.8', 1),
  ];
  return {
    strokes,
    words: [],
    box: { left: -9, right: 9, top: -18, bottom: 1 },
    ports: atBase(ports),
    dot: { x: -6, y: -6 },
    fixed: true,
  };
}

/** Egg insulators at both ends of a wire antenna and the wire between them; ends relative to the lower one. */
export function wireGlyph(ports: readonly Port[], end: Point): Glyph {
  const length = Math.max(1, Math.hypot(end.x, end.y));
  const on = (distance: number): Point => ({ x: (end.x / length) * distance, y: (end.y / length) * distance });
  const degrees = (Math.atan2(end.y, end.x) * 180) / Math.PI;
  const egg = (center: Point): string => {
    const [a, b] = [
      { x: center.x - (end.x / length) * 4.5, y: center.y - (end.y / length) * 4.5 },
      { x: center.x + (end.x / length) * 4.5, y: center.y + (end.y / length) * 4.5 },
    ];
    const turn = degrees.toFixed(1);
    return `M${f(a.x)} ${f(a.y)} A4.5 2.8 ${turn} 0 1 ${f(b.x)} ${f(b.y)} A4.5 2.8 ${turn} 0 1 ${f(a.x)} ${f(a.y)} Z`;
  };
  const inset = Math.min(5, length / 3);
  return {
    strokes: [
      stroke(`M0 0 L${f(end.x)} ${f(end.y)}`, 2),
      stroke(egg(on(inset)), 1.2, 'paper'),
      stroke(egg(on(length - inset)), 1.2, 'paper'),
    ],
    words: [],
    box: {
      left: Math.min(0, end.x) - 3,
      right: Math.max(0, end.x) + 3,
      top: Math.min(0, end.y) - 3,
      bottom: Math.max(0, end.y) + 3,
    },
    ports: atBase(ports),
    dot: on(length * 0.52),
    fixed: true,
  };
}

const f = (value: number): string => value.toFixed(2);
const atBase = (ports: readonly Port[]): ReadonlyMap<string, Point> =>
  new Map(ports.map((port) => [port.id, { x: 0, y: 0 }]));
