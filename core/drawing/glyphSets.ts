import type { PartOf } from '../model/part.ts';
import type { Box } from './geometry.ts';
import { boxPath, type Glyph, LABEL_SIZE, labelledBox, portsAround, stroke } from './glyph.ts';

/** Longest tag written into a box; a longer one gives way to the word for its kind. */
const LONGEST_TAG = 8;

/** What a box says: the tag where it is short, else the word for the kind. */
export const boxLabel = (tag: string, word: string): string =>
  tag.trim() !== '' && [...tag].length <= LONGEST_TAG ? tag : word;

const RADIO_WORDS: Readonly<Record<PartOf<'radio'>['radioClass'], string>> = {
  'vhf-fixed': 'VHF',
  'ais-class-a': 'AIS',
  'ais-class-b-cs': 'AIS',
  'ais-class-b-so': 'AIS',
  'ais-receiver': 'AIS RX',
  'mf-hf': 'HF',
  'navtex-receiver': 'NAVTEX',
  'l-band-messenger': 'L-BAND',
  'l-band-voice': 'L-BAND',
  'broadband-terminal': 'SAT',
  'gnss-receiver': 'GNSS',
  'cellular-repeater': 'CELL',
  'cellular-router': 'CELL',
  'wifi-bridge': 'WI-FI',
  'broadcast-receiver': 'FM',
};

/** A radio: a labelled box; one with its own antenna carries it on its back. */
export function radioGlyph(part: PartOf<'radio'>, tag: string): Glyph {
  const glyph = labelledBox(boxLabel(tag, RADIO_WORDS[part.radioClass]), part.ports);
  if (!part.traits.integralAntenna) return glyph;
  return withOwnAntenna(glyph);
}

/** A position source: a labelled box, with a screen line where it is a plotter. */
export function positionSourceGlyph(part: PartOf<'position-source'>, tag: string): Glyph {
  const glyph = labelledBox(boxLabel(tag, part.traits.display ? 'PLOT' : 'GNSS'), part.ports);
  const { box } = glyph;
  const screen = stroke(
    boxPath({ left: box.left + 1.8, right: box.right - 1.8, top: box.top + 1.8, bottom: box.bottom - 1.8 }),
    0.5,
  );
  const framed = part.traits.display ? { ...glyph, strokes: [...glyph.strokes, screen] } : glyph;
  return part.traits.integralAntenna ? withOwnAntenna(framed) : framed;
}

/** A small antenna on the back of a box. */
export function withOwnAntenna(glyph: Glyph): Glyph {
  const { box } = glyph;
  const x = box.right - 4;
  const mast = stroke(
    `M${x} ${box.top} L${x} ${box.top - 6} M${x - 3} ${box.top - 6} L${x} ${box.top - 2.5} L${x + 3} ${box.top - 6}`,
    1,
  );
  return { ...glyph, strokes: [...glyph.strokes, mast], box: { ...box, top: box.top - 7 }, body: box };
}

/** A set complete with antenna and battery. */
export function standaloneGlyph(part: PartOf<'standalone'>, tag: string): Glyph {
  switch (part.standaloneClass) {
    case 'handheld-vhf':
    case 'handheld-vhf-dsc':
    case 'handheld-satellite':
      return handheld(part.ports);
    case 'beacon-406':
    case 'personal-beacon':
      return beacon(part, boxLabel(tag, '406'));
    default:
      return transponder(part, boxLabel(tag, part.standaloneClass === 'ais-mob' ? 'MOB' : 'SART'));
  }
}

function handheld(ports: PartOf<'standalone'>['ports']): Glyph {
  const box: Box = { left: -4, right: 4, top: -6, bottom: 8 };
  const strokes = [
    stroke('M-4 -4 Q-4 -6 -2 -6 L2 -6 Q4 -6 4 -4 L4 6 Q4 8 2 8 L-2 8 Q-4 8 -4 6 Z', 1.3, 'paper'),
    stroke('M-2.2 -6 L-2.2 -14', 1.7),
    stroke('M-2 -3 L2 -3 L2 0 L-2 0 Z', 0.8),
    stroke('M-1.8 3 L1.8 3 M-1.8 5 L1.8 5', 0.8),
  ];
  return {
    strokes,
    words: [],
    box: { ...box, top: -15 },
    body: box,
    ports: portsAround(ports, box),
    dot: { x: 4, y: 4 },
    fixed: false,
  };
}

/** A float-shaped body under a whip. */
function beacon(part: PartOf<'standalone'>, label: string): Glyph {
  const glyph = labelledBox(label, part.ports);
  const { left, right, top, bottom } = glyph.box;
  const body = stroke(
    `M${left + 3} ${top} L${right - 3} ${top} L${right} ${bottom} L${left} ${bottom} Z`,
    1.3,
    'paper',
  );
  const whip = stroke(
    `M0 ${top} L0 ${top - 7} M-3 ${top - 5} A4 4 0 0 1 -3 ${top - 11} M3 ${top - 5} A4 4 0 0 0 3 ${top - 11}`,
    1,
  );
  return { ...glyph, strokes: [body, whip], box: { ...glyph.box, top: top - 11 }, body: glyph.box };
}

function transponder(part: PartOf<'standalone'>, label: string): Glyph {
  const glyph = labelledBox(label, part.ports);
  const { left, right, top, bottom } = glyph.box;
  const body = `M${left + 3} ${top} L${right - 3} ${top} Q${right} ${top} ${right} 0 Q${right} ${bottom} ${right - 3} ${bottom} L${left + 3} ${bottom} Q${left} ${bottom} ${left} 0 Q${left} ${top} ${left + 3} ${top} Z`;
  return { ...glyph, strokes: [stroke(body, 1.3, 'paper')] };
}

/** Something whose part nobody knows: a broken box with its tag. */
export function unknownGlyph(tag: string): Glyph {
  const glyph = labelledBox(boxLabel(tag, '?'), []);
  return {
    ...glyph,
    strokes: glyph.strokes.map((line) => ({ ...line, dash: [3, 2] })),
    words: [{ text: boxLabel(tag, '?'), x: 0, y: 3.1, size: LABEL_SIZE }],
  };
}
