import type { PartOf } from '../model/part.ts';
import type { Box, Point } from './geometry.ts';
import { boxPath, type Glyph, inlinePorts, labelledBox, portsAround, ring, type Stroke, stroke } from './glyph.ts';

/** Symbol of something in the antenna line. */
export function inlineGlyph(part: PartOf<'inline'>, tag: string): Glyph {
  switch (part.deviceClass) {
    case 'splitter-active':
      return triangle(part, [stroke('M-2.4 -1 L2.4 -1 L0 -5 Z', 0.8, 'ink')]);
    case 'splitter-passive':
      return triangle(part, []);
    case 'diplexer':
      return inlineBox(part, [stroke('M-5 3.5 Q-2.5 3.5 -1.5 -3.5', 1), stroke('M1.5 3.5 Q2.5 -3.5 5 -3.5', 1)]);
    case 'switch':
      return inlineBox(part, [
        stroke('M0 -4 L4 4', 1.3),
        stroke(ring(0, -4.4, 1), 0.8, 'ink'),
        stroke(ring(-4, 4.2, 1), 0.8, 'paper'),
      ]);
    case 'arrestor':
      // Spark gap (S00371): two arrowheads point to point.
      return inlineBox(part, [
        stroke('M-2.4 -4.6 L2.4 -4.6 L0 -0.8 Z', 0.8, 'ink'),
        stroke('M-2.4 4.6 L2.4 4.6 L0 0.8 Z', 0.8, 'ink'),
      ]);
    case 'amplifier':
      return triangle(part, [stroke('M0 -1 L0 -5 M-2 -3 L0 -5 L2 -3', 0.9)]);
    case 'filter':
      return inlineBox(part, [stroke('M-5 0 Q-2.5 -5 0 0 Q2.5 5 5 0', 1)]);
    case 'joint':
    case 'adapter':
      return plugAndSocket(part);
    case 'tuner':
      return tuner(part, tag);
  }
}

/** Splitter (S01281 and its kin): one line into the point, the shared ways out of the base. */
function triangle(part: PartOf<'inline'>, marks: readonly Stroke[]): Glyph {
  const box: Box = { left: -8, right: 8, top: -8, bottom: 6 };
  return inlineGlyphOf(part, box, [stroke('M0 -8 L8 6 L-8 6 Z', 1.3, 'paper'), ...shift(marks, 4)]);
}

function inlineBox(part: PartOf<'inline'>, marks: readonly Stroke[]): Glyph {
  const box: Box = { left: -7, right: 7, top: -6.5, bottom: 6.5 };
  return inlineGlyphOf(part, box, [stroke(boxPath(box), 1.3, 'paper'), ...marks]);
}

function inlineGlyphOf(part: PartOf<'inline'>, box: Box, strokes: readonly Stroke[]): Glyph {
  return {
    strokes,
    words: [],
    box,
    ports: inlinePorts(part.ports, part.throughs, box),
    dot: { x: 0, y: box.bottom },
    fixed: false,
  };
}

/** Plug and socket (S00033): a filled pin in a cup. */
function plugAndSocket(part: PartOf<'inline'>): Glyph {
  const rf = part.ports.filter((port) => port.medium === 'rf');
  const ends: readonly Point[] = [
    { x: 0, y: -6 },
    { x: 0, y: 6 },
  ];
  return {
    strokes: [
      stroke('M-4 -3.5 L4 -3.5 L4 3.5 L-4 3.5 Z', 0.1, 'paper'),
      stroke('M-4 0.5 A4 4 0 0 0 4 0.5', 1.5),
      stroke('M0 4.4 L0 6', 1.3),
      stroke('M-1.4 -5 L1.4 -5 L1.4 1.6 L-1.4 1.6 Z', 0.8, 'ink'),
    ],
    words: [],
    box: { left: -5.5, right: 5.5, top: -6.5, bottom: 6.5 },
    ports: new Map(rf.map((port, index) => [port.id, ends[index % 2] ?? { x: 0, y: 0 }])),
    dot: { x: 3, y: 2 },
    fixed: false,
  };
}

function tuner(part: PartOf<'inline'>, tag: string): Glyph {
  const glyph = labelledBox(tag, part.ports);
  const { box } = glyph;
  // Adjustable (S00081): an arrow across the corner.
  const arrow = stroke(
    `M${box.left - 3} ${box.bottom + 3} L${box.left + 4} ${box.bottom - 4} M${box.left + 0.6} ${box.bottom - 3.6} L${box.left + 4} ${box.bottom - 4} L${box.left + 3.6} ${box.bottom - 0.6}`,
    0.9,
  );
  return {
    ...glyph,
    strokes: [...glyph.strokes, arrow],
    ports: inlinePorts(part.ports, part.throughs, box),
  };
}

/** Symbol of a source or distribution part. */
export function powerGlyph(part: PartOf<'power'>, tag: string): Glyph {
  switch (part.powerClass) {
    case 'battery-bank':
      return battery(part, 2);
    case 'starter-battery':
      return battery(part, 1);
    case 'panel':
      return panel(part, tag);
    case 'breaker':
      // Circuit breaker (S00287): a contact with a cross.
      return powerBox(part, 12, [
        stroke('M0 6.5 L0 3 L-4.5 -3.5', 1.2),
        stroke('M0 -6.5 L0 -3.5', 1.2),
        stroke('M-1.8 -5.3 L1.8 -1.7 M1.8 -5.3 L-1.8 -1.7', 1),
      ]);
    case 'fuse-holder':
      // Fuse (S00362).
      return powerBox(part, 12, [
        stroke('M-2.5 -4.5 L2.5 -4.5 L2.5 4.5 L-2.5 4.5 Z', 1.1, 'paper'),
        stroke('M0 -6.5 L0 6.5', 1),
      ]);
    case 'inverter':
      return converter(part, dc(-3.2, -3), ac(3.2, 3.2));
    case 'converter':
      return converter(part, dc(-3.2, -3), dc(3.2, 3.4));
    case 'charger':
      return converter(part, ac(-3.2, -3), dc(3.2, 3.4));
  }
}

/** Cells (S01341): a long thin plate and a short thick one each. */
function battery(part: PartOf<'power'>, cells: number): Glyph {
  const half = 5 + cells * 5;
  const box: Box = { left: -half, right: half, top: -7, bottom: 7 };
  const strokes: Stroke[] = [
    stroke(boxPath(box), 1.3, 'paper'),
    stroke(`M${-half} 0 L${-cells * 4 + 1} 0 M${half} 0 L${cells * 4 - 1} 0`, 1),
  ];
  for (let cell = 0; cell < cells; cell++) {
    const x = (cell - (cells - 1) / 2) * 8;
    strokes.push(stroke(`M${x - 2} -5 L${x - 2} 5`, 1.1), stroke(`M${x + 2} -2.6 L${x + 2} 2.6`, 2.2));
  }
  return { strokes, words: [], box, ports: portsOnTop(part, box), dot: { x: 0, y: box.bottom }, fixed: false };
}

function panel(part: PartOf<'power'>, tag: string): Glyph {
  const glyph = labelledBox(tag, part.ports);
  const { box } = glyph;
  const bar = stroke(`M${box.left + 2.5} ${box.bottom - 1.6} L${box.right - 2.5} ${box.bottom - 1.6}`, 1.8);
  return {
    ...glyph,
    strokes: [...glyph.strokes, bar],
    words: glyph.words.map((word) => ({ ...word, y: word.y - 1.2 })),
    ports: portsOnTop(part, box),
  };
}

function powerBox(part: PartOf<'power'>, size: number, marks: readonly Stroke[]): Glyph {
  const half = size / 2;
  const box: Box = { left: -half - 1, right: half - 1, top: -6.5, bottom: 6.5 };
  return {
    strokes: [stroke(boxPath(box), 0.9, 'paper'), ...marks],
    words: [],
    box,
    ports: portsOnTop(part, box),
    dot: { x: box.right, y: 3 },
    fixed: false,
  };
}

/** Converter (S00213): a square parted by a diagonal, what goes in above it and what comes out below. */
function converter(part: PartOf<'power'>, input: Stroke, output: Stroke): Glyph {
  const box: Box = { left: -8, right: 8, top: -8, bottom: 8 };
  const strokes = [stroke(boxPath(box), 1.3, 'paper'), stroke('M-8 8 L8 -8', 1), input, output];
  return { strokes, words: [], box, ports: portsOnTop(part, box), dot: { x: 4, y: box.bottom }, fixed: false };
}

const dc = (x: number, y: number): Stroke =>
  stroke(`M${x - 3} ${y - 1.2} L${x + 3} ${y - 1.2} M${x - 3} ${y + 1.4} L${x + 3} ${y + 1.4}`, 1);
const ac = (x: number, y: number): Stroke =>
  stroke(`M${x - 3.4} ${y} Q${x - 1.7} ${y - 3.6} ${x} ${y} Q${x + 1.7} ${y + 3.6} ${x + 3.4} ${y}`, 1);

/** Outgoing terminals along the top, incoming along the bottom. */
function portsOnTop(part: PartOf<'power'>, box: Box): ReadonlyMap<string, Point> {
  const places = new Map(portsAround(part.ports, box));
  const out = part.ports.filter((port) => port.medium === 'dc' && port.role === 'out');
  out.forEach((port, index) => {
    places.set(port.id, { x: box.left + ((index + 1) / (out.length + 1)) * (box.right - box.left), y: box.top });
  });
  return places;
}

function shift(marks: readonly Stroke[], dy: number): readonly Stroke[] {
  return marks.map((mark) => ({
    ...mark,
    d: mark.d.replace(
      /([ML])(-?[\d.]+) (-?[\d.]+)/g,
      (_, step: string, x: string, y: string) => `${step}${x} ${Number(y) + dy}`,
    ),
  }));
}
