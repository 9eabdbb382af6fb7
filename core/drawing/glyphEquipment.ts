import type { EquipmentClass, PartOf } from '../model/part.ts';
import type { Box, Point } from './geometry.ts';
import { boxPath, type Glyph, labelledBox, portsAround, ring, type Stroke, stroke } from './glyph.ts';
import { boxLabel, withOwnAntenna } from './glyphSets.ts';

/** A plain sign: its strokes, the box they fill, where a leader ends, and whether it stands on its spot. */
interface Sign {
  readonly strokes: readonly Stroke[];
  readonly box: Box;
  readonly dot?: Point;
  readonly fixed?: boolean;
}

const SIGNS: Partial<Record<EquipmentClass, Sign>> = {
  // Lamp (S00965).
  lamp: {
    strokes: [stroke(ring(0, -4, 4), 1.2, 'paper'), stroke('M-2.8 -6.8 L2.8 -1.2 M2.8 -6.8 L-2.8 -1.2', 1)],
    box: { left: -4.5, right: 4.5, top: -8.5, bottom: 0.5 },
    dot: { x: 2.6, y: -2 },
    fixed: true,
  },
  compass: {
    strokes: [stroke(ring(0, 0, 6), 1.2, 'paper'), stroke('M0 4.5 L-1.8 0 L0 -4.5 L1.8 0 Z', 0.8, 'ink')],
    box: { left: -6.5, right: 6.5, top: -6.5, bottom: 6.5 },
  },
  'wind-generator': {
    strokes: [
      stroke('M0 0 L0 -16', 1.5),
      stroke('M0 -16 Q6 -20 9 -17 M0 -16 Q-1 -23 -5.5 -24 M0 -16 Q-6 -12 -4 -8', 1.4),
      stroke(ring(0, -16, 1.6), 1, 'ink'),
    ],
    box: { left: -8, right: 10, top: -25, bottom: 1 },
    dot: { x: 0, y: -5 },
    fixed: true,
  },
  // Earth (S00200).
  'earth-plate': {
    strokes: [stroke('M0 -7 L0 -1 M-7 -1 L7 -1 M-4.5 2 L4.5 2 M-2 5 L2 5', 1.4)],
    box: { left: -7.5, right: 7.5, top: -7, bottom: 6 },
  },
  'data-bus': {
    strokes: [stroke('M-12 0 L12 0', 2.6), stroke('M-8 0 L-8 -5 M0 0 L0 -5 M8 0 L8 -5', 1)],
    box: { left: -12.5, right: 12.5, top: -6, bottom: 3 },
  },
  'dead-cable': {
    strokes: [stroke('M-9 0 Q-5 -6 -1 0 Q3 6 7 0', 1.2), stroke('M5 -2.4 L9.5 2.4 M9.5 -2.4 L5 2.4', 1.1)],
    box: { left: -10, right: 10, top: -5, bottom: 5 },
  },
};

/** Other gear the installation depends on or keeps clear of. */
export function equipmentGlyph(part: PartOf<'equipment'>, tag: string): Glyph {
  const sign = part.equipmentClass === 'radar' ? radar(part) : SIGNS[part.equipmentClass];
  if (sign) {
    const { strokes, box, dot = { x: 0, y: box.bottom }, fixed = false } = sign;
    return { strokes, words: [], box, ports: portsAround(part.ports, box), dot, fixed };
  }
  switch (part.equipmentClass) {
    case 'display':
      return withScreen(labelledBox(boxLabel(tag, 'MFD'), part.ports));
    case 'router':
      return withOwnAntenna(labelledBox(boxLabel(tag, 'NET'), part.ports));
    default:
      return labelledBox(boxLabel(tag, 'PILOT'), part.ports);
  }
}

/** A second frame inside the box. */
export function withScreen(glyph: Glyph): Glyph {
  const { left, right, top, bottom } = glyph.box;
  const screen = boxPath({ left: left + 1.8, right: right - 1.8, top: top + 1.8, bottom: bottom - 1.8 });
  return { ...glyph, strokes: [...glyph.strokes, stroke(screen, 0.5)] };
}

/** An open array turns a bar on a pedestal; anything else is under a dome. */
function radar(part: PartOf<'equipment'>): Sign {
  const common = { box: { left: -10, right: 10, top: -11, bottom: 1 }, dot: { x: 5, y: -3 }, fixed: true };
  if (/array/i.test(`${part.id} ${part.name}`)) {
    const bar = stroke('M-10 -6 L10 -6 L10 -9.5 L-10 -9.5 Z', 1.3, 'paper');
    return { ...common, strokes: [stroke('M-3 0 L3 0 L2 -6 L-2 -6 Z', 1.3, 'paper'), bar] };
  }
  const dome = stroke('M-9.5 -3.5 C-9 -12.5 9 -12.5 9.5 -3.5 Z', 1.3, 'paper');
  return { ...common, strokes: [stroke('M-8.5 0 L8.5 0 L9.5 -3.5 L-9.5 -3.5 Z', 1.2, 'paper'), dome] };
}
