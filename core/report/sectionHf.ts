import type { HfBand, HfResult } from '../reach/types.ts';
import { bandText, bare, distanceUnit, type SheetContext, show } from './context.ts';
import { dayBlock } from './hfDayTable.ts';
import type { Block, SheetSection } from './types.ts';
import { itemTag } from './words.ts';

/** Each MF/HF set by its antenna: what it radiates, how far the ground wave goes, and which band to try when. */
export function hfSection(context: SheetContext): SheetSection {
  const { hf } = context.assessment;
  return {
    id: 'hf',
    title: 'MF and HF',
    page: 'flow',
    ownPage: false,
    blocks: hf.length === 0 ? [] : [intro(), ...hf.flatMap((result) => setBlocks(context, result))],
  };
}

function intro(): Block {
  return {
    kind: 'paragraph',
    text:
      'Efficiency is the share of the power at the antenna that is radiated; the rest warms coil, wire and earth. The ' +
      'ground wave follows the sea by day; farther than that a band depends on the sky. The bands by part of day come ' +
      'from the layers stated under the conditions assumed, by geometry: no forecast, no promise that a call is ' +
      'answered. With power on, the antenna’s wire and lead-in carry a voltage that burns: keep them out of reach.',
    tone: 'plain',
  };
}

export function hfTitle(context: SheetContext, result: HfResult): string {
  return `${itemTag(context.project, result.itemId)} by ${itemTag(context.project, result.antennaId)}`;
}

function setBlocks(context: SheetContext, result: HfResult): Block[] {
  const remarks = [
    ...result.notes,
    ...result.bands.flatMap(({ name, notes }) => notes.map((note) => `${name}: ${note}`)),
  ];
  return [
    { kind: 'heading', level: 2, text: hfTitle(context, result) },
    {
      kind: 'paragraph',
      text:
        `Effective length ${show(context, result.effectiveLengthM, 'm')}, earth loss ` +
        `${show(context, result.groundLossOhm, 'ohm', 1)}${result.canTransmit ? '' : '. Receives only'}.`,
      tone: 'strong',
    },
    bandTable(context, result),
    ...groundWaveTable(context, result),
    ...dayBlock(context, result),
    ...remarks.map((text): Block => ({ kind: 'paragraph', text, tone: 'quiet' })),
  ];
}

function bandTable(context: SheetContext, result: HfResult): Block {
  const power = result.canTransmit
    ? ([
        ['Radiated (W)', 12],
        ['Peak at the insulator (V)', 15],
      ] as const)
    : [];
  const heads = [
    ['Frequency (MHz)', 13],
    ['Radiation (Ω)', 12],
    ['Coil (Ω)', 10],
    ['Feeder and tuner (dB)', 14],
    ['Efficiency (%)', 12],
    ...power,
    ['Noise from outside (dB)', 14],
  ] as const;
  return {
    kind: 'table',
    caption: 'Antenna and power, band by band',
    columns: [
      { header: 'Band', weight: 12, align: 'start' },
      ...heads.map(([header, weight]) => ({ header, weight, align: 'end' as const })),
    ],
    rows: result.bands.map((band) => [
      band.name,
      bare(context, band.frequencyMhz, 'MHz', 3),
      bare(context, band.radiationOhm, 'ohm', 1),
      bare(context, band.coilOhm, 'ohm', 1),
      bare(context, band.feederLossDb, 'dB', 1),
      efficiencyText(context, band),
      ...(result.canTransmit
        ? [bare(context, band.radiatedW, 'W', 1), bare(context, band.insulatorPeakV, 'count', 0)]
        : []),
      bare(context, band.noiseDb, 'dB', 0),
    ]),
    empty: 'No band of this set is reckoned.',
  };
}

/** A least value where the antenna is too long for the closed forms. */
export function efficiencyText(context: SheetContext, { efficiency, radiationOhm }: HfBand): string {
  const percent = 100 * efficiency;
  return `${radiationOhm === null ? '≥ ' : ''}${bare(context, percent, 'percent', percent < 10 ? 1 : 0)}`;
}

const WAY_WORDS = { transmit: 'they hear you', receive: 'you hear them' } as const;

function groundWaveTable(context: SheetContext, result: HfResult): Block[] {
  const rows = result.bands.flatMap((band) =>
    band.groundWave.map(({ name, reach, limitedBy }) => [
      band.name,
      name,
      bare(context, reach.nominalKm, 'km', 0),
      bandText(context, reach, 0),
      WAY_WORDS[limitedBy],
    ]),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Ground wave over open sea by day',
      columns: [
        { header: 'Band', weight: 14, align: 'start' },
        { header: 'To or from', weight: 36, align: 'start' },
        { header: `Reach (${distanceUnit(context)})`, weight: 14, align: 'end' },
        { header: 'band', weight: 18, align: 'end' },
        { header: 'Gives out first', weight: 18, align: 'start' },
      ],
      rows,
      empty: '',
    },
  ];
}
