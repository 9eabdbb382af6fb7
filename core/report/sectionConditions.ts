import { LIGHTNING_CHOICES, MONTHS, NOISE_CHOICES } from '../reach/conditionWords.ts';
import { bare, type SheetContext, show } from './context.ts';
import type { SheetSection } from './types.ts';

const worded = (
  choices: readonly { readonly id: string; readonly name: string; readonly note: string }[],
  id: string,
): string => {
  const choice = choices.find((each) => each.id === id);
  return choice ? `${choice.name}: ${choice.note}` : id;
};

/** What the distances that follow take for granted about the world outside the boat. Left out where none follow. */
export function conditionSection(context: SheetContext): SheetSection {
  const { ranges, hf } = context.assessment;
  const hasAny = ranges.length > 0 || hf.length > 0;
  return {
    id: 'conditions',
    title: 'Conditions assumed',
    page: 'flow',
    ownPage: false,
    blocks: hasAny
      ? [
          {
            kind: 'paragraph',
            text:
              'The distances that follow hold for these conditions and no others. They were stated for this sheet, not ' +
              'forecast; change them and the distances change.',
            tone: 'plain',
          },
          { kind: 'facts', rows: [...seaFacts(context), ...(hf.length > 0 ? skyFacts(context) : [])] },
        ]
      : [],
  };
}

function seaFacts(context: SheetContext): [string, string][] {
  const { conditions } = context.project.settings;
  return [
    ['Sea', 'Open, smooth, salt; no land, swell or other hull in the way'],
    ['Air', `Median refraction: an effective earth radius of ${bare(context, 8500, 'count', 0)} km. No ducts`],
    ['Boat', 'Upright, at full power, antennas where the drawing has them'],
    ['Noise', `${worded(NOISE_CHOICES, conditions.noise)} (ITU-R P.372). On VHF it belongs to the real-life margin`],
  ];
}

function skyFacts(context: SheetContext): [string, string][] {
  const { lightning, foF2DayMhz, foF2NightMhz, m3000, latitudeDeg, month, sunspotNumber } =
    context.project.settings.conditions;
  const side = latitudeDeg < 0 ? 'south' : 'north';
  const critical = `${show(context, foF2DayMhz, 'MHz', 1)} at its highest by day, ${show(context, foF2NightMhz, 'MHz', 1)} at its lowest by night`;
  return [
    ['Lightning noise', worded(LIGHTNING_CHOICES, lightning)],
    ['F2 layer', `Critical frequency ${critical}; M(3000) ${show(context, m3000, 'ratio', 2)}`],
    [
      'Sun',
      `${MONTHS[month - 1]}, ${show(context, Math.abs(latitudeDeg), 'degree')} ${side}, sunspot number R12 ${show(context, sunspotNumber, 'count')}`,
    ],
  ];
}
