import { indexProject } from '../catalogue/lookup.ts';
import { MAX_SHOWN_VSWR } from '../links/budget.ts';
import type { PathBudget } from '../links/types.ts';
import type { RadioClass, StandaloneClass } from '../model/part.ts';
import { afterLossW } from '../rf/decibels.ts';
import { openEndVswr, vswrAtInput } from '../rf/mismatch.ts';
import { bare, type SheetContext, show, watts } from './context.ts';
import { feederLoss, hasFeeder, openEndText, pathTitle } from './sectionLosses.ts';
import type { BlankRow, Block, SheetSection } from './types.ts';
import { STANDALONE_WORDS } from './words.ts';

const YES_NO = 'yes / no';
/** Antenna VSWR that the trade calls good; common practice, no source. */
const GOOD_VSWR = 1.5;

/** Blanks to fill in on board, each with the value this design expects beside it. */
export function commissioningSection(context: SheetContext): SheetSection {
  const transmitting = context.assessment.paths.filter(
    (path) => path.txPowerW !== null && path.canTransmit && hasFeeder(path),
  );
  return {
    id: 'commissioning',
    title: 'Commissioning record',
    page: 'flow',
    ownPage: true,
    blocks: [
      {
        kind: 'paragraph',
        text:
          'Date, instrument and who read it belong to every value. Connect an antenna or a rated dummy load before any ' +
          'transmission; open-end readings only with an antenna analyser. Keep transmissions short, on a working channel ' +
          'and within the licence.',
        tone: 'strong',
      },
      {
        kind: 'facts',
        rows: [
          ['Place and date', ''],
          ['Instruments, serial and calibration', ''],
          ['Engine, chargers, shore power', ''],
        ],
      },
      { kind: 'blanks', caption: 'Before switching on', rows: beforeRows(context) },
      ...transmitting.map(
        (path): Block => ({ kind: 'blanks', caption: pathTitle(context, path), rows: pathRows(context, path) }),
      ),
      { kind: 'blanks', caption: 'Supply at the set', rows: supplyRows(context) },
      { kind: 'blanks', caption: 'Function', rows: functionRows(context) },
      {
        kind: 'blanks',
        caption: 'Noise: squelch just closed on an idle channel, then each in turn on and off',
        rows: noiseRows(),
      },
    ],
  };
}

function beforeRows(context: SheetContext): BlankRow[] {
  const cables = context.project.runs.length + context.project.feeds.length + context.project.dataLinks.length;
  return [
    { label: 'Every cable carries its number at both ends', expected: `${2 * cables} labels`, unit: YES_NO },
    {
      label: 'Every positive conductor is fused at its source, as listed under DC feeds',
      expected: 'all',
      unit: YES_NO,
    },
    { label: 'Antenna off, feeder open: no DC path between core and shield', expected: 'open circuit', unit: 'ohm' },
    { label: 'Joints and glands outdoors sealed and supported', expected: 'all', unit: YES_NO },
    { label: 'Photographs of joints, glands, fuses and labels taken', expected: 'kept with this sheet', unit: YES_NO },
  ];
}

/** Services whose sets an ordinary through-line wattmeter can check. */
const METERED: readonly PathBudget['service'][] = ['vhf-voice', 'ais', 'mf-hf'];

function pathRows(context: SheetContext, path: PathBudget): BlankRow[] {
  const feeder = feederLoss(path);
  const powerRows: BlankRow[] = [
    { label: 'Forward power at the set', expected: watts(context, path.txPowerW ?? 0), unit: 'W' },
    { label: 'Forward power at the antenna end', expected: wattsExpectation(context, path), unit: 'W' },
  ];
  if (path.service === 'mf-hf') {
    return [
      { label: 'VSWR at the set, tuned', expected: `${show(context, GOOD_VSWR, 'ratio', 1)} or less`, unit: '' },
      ...powerRows,
    ];
  }
  return [
    { label: 'VSWR at the set, antenna on', expected: vswrExpectation(context, path, feeder.lossDb), unit: '' },
    {
      label: 'VSWR at the set, antenna taken off (analyser only)',
      expected: openEndExpectation(context, path),
      unit: '',
    },
    ...(METERED.includes(path.service) ? powerRows : []),
    {
      label: 'Loss of the feeder',
      expected: `${bare(context, feeder.lossDb, 'dB', 2)} ± ${show(context, feeder.toleranceDb, 'dB')}`,
      unit: 'dB',
    },
  ];
}

/** Good is what a good antenna reads through this loss, with a warning where the loss would hide a bad one. */
function vswrExpectation(context: SheetContext, path: PathBudget, feederDb: number): string {
  const text = `${show(context, vswrAtInput(feederDb, GOOD_VSWR), 'ratio')} or less`;
  const hides = path.openEndVswr < 3;
  return hides
    ? `${text}; proves little: with no antenna it would read ${show(context, path.openEndVswr, 'ratio')}`
    : text;
}

/** The open-end reading with its band: more loss reads lower. */
function openEndExpectation(context: SheetContext, path: PathBudget): string {
  const { lossDb, toleranceDb } = feederLoss(path);
  const nominal = openEndText(context, path);
  if (path.openEndVswr >= MAX_SHOWN_VSWR) return nominal;
  const from = show(context, openEndVswr(lossDb + toleranceDb), 'ratio', 1);
  const least = lossDb - toleranceDb;
  return least > 0
    ? `${nominal} (${from} to ${show(context, openEndVswr(least), 'ratio', 1)}); higher is better`
    : `${nominal} (${from} or more); higher is better`;
}

function wattsExpectation(context: SheetContext, path: PathBudget): string {
  const nominalW = path.wattsAtAntenna ?? 0;
  const lowW = afterLossW(nominalW, path.toleranceDb);
  const highW = Math.min(path.txPowerW ?? nominalW, afterLossW(nominalW, -path.toleranceDb));
  const digits = nominalW < 1 ? 2 : 1;
  return `${watts(context, nominalW)} (${bare(context, lowW, 'W', digits)} to ${bare(context, highW, 'W', digits)})`;
}

/**
 * Least voltage at a set on transmit from a 12 V battery: 47 CFR 80.911 asks it of small passenger vessels' VHF after ten
 * minutes at full power; a guide elsewhere.
 */
const LEAST_12V_SUPPLY_V = 11.5;

function is12V(nominalV: number): boolean {
  return nominalV > 10 && nominalV < 15;
}

function supplyRows(context: SheetContext): BlankRow[] {
  const { effective, items } = indexProject(context.project);
  return context.assessment.feeds.flatMap((feed) => {
    const item = items.get(feed.loadId);
    const part = effective.get(feed.loadId);
    if (!item || part?.kind !== 'radio') return [];
    const nominalV = part.figures.supplyVoltageV.value;
    const least = is12V(nominalV) ? `; not under ${show(context, LEAST_12V_SUPPLY_V, 'V', 1)}` : '';
    const limitV = (nominalV * feed.limitPercent) / 100;
    return [
      { label: `${item.tag}: supply idle`, expected: 'as at the battery', unit: 'V' },
      {
        label: `${item.tag}: supply on transmit at ${show(context, feed.currentA, 'A')}`,
        expected: `idle less ${show(context, feed.totalDropV, 'V')} in the wiring; limit ${show(context, limitV, 'V')}${least}`,
        unit: 'V',
      },
    ];
  });
}

const DSC_CLASSES: readonly RadioClass[] = ['vhf-fixed', 'mf-hf'];

function functionRows(context: SheetContext): BlankRow[] {
  const { effective } = indexProject(context.project);
  return context.project.items.flatMap((item): BlankRow[] => {
    const part = effective.get(item.id);
    if (part?.kind === 'radio') return radioRows(item.tag, part.radioClass, part.traits.dsc);
    if (part?.kind === 'standalone') return standaloneRows(item.tag, part.standaloneClass);
    if (part?.kind === 'antenna' && part.antennaClass === 'vhf-emergency') {
      return [
        {
          label: `${item.tag}: rigged once, plug fits, lead reaches the set`,
          expected: 'a radio check answered',
          unit: YES_NO,
        },
      ];
    }
    return [];
  });
}

function radioRows(tag: string, radioClass: RadioClass, dsc: boolean): BlankRow[] {
  if (radioClass === 'ais-receiver')
    return [{ label: `${tag}: targets seen`, expected: 'ships in sight shown', unit: YES_NO }];
  if (radioClass.startsWith('ais-')) {
    return [
      { label: `${tag}: own position and dimensions fed`, expected: 'fix shown, A B C D set', unit: YES_NO },
      {
        label: `${tag}: own ship seen by a third party, static data right`,
        expected: 'name, identity, position',
        unit: YES_NO,
      },
    ];
  }
  if (DSC_CLASSES.includes(radioClass)) {
    const dscRows: BlankRow[] = [
      { label: `${tag}: identity programmed and registered to this boat`, expected: 'as on the licence', unit: YES_NO },
      { label: `${tag}: position fed, shown with its time`, expected: 'agrees with the plotter', unit: YES_NO },
      { label: `${tag}: DSC test call (never a distress alert)`, expected: 'acknowledged', unit: YES_NO },
    ];
    return [
      ...(dsc ? dscRows : []),
      {
        label: `${tag}: radio check on a working channel, call sign and “test”, under 10 s, full and low power`,
        expected: 'loud and clear',
        unit: YES_NO,
      },
    ];
  }
  return [{ label: `${tag}: switched on and exercised as its maker describes`, expected: 'works', unit: YES_NO }];
}

function standaloneRows(tag: string, standaloneClass: StandaloneClass): BlankRow[] {
  const kind = STANDALONE_WORDS[standaloneClass];
  if (standaloneClass === 'handheld-vhf') {
    return [
      {
        label: `${tag} (${kind}): radio check on a working channel, low power`,
        expected: 'loud and clear',
        unit: YES_NO,
      },
      { label: `${tag}: battery charged, spare battery or charger aboard`, expected: 'full', unit: YES_NO },
    ];
  }
  return [
    {
      label: `${tag} (${kind}): self-test as its maker describes, never a live alert`,
      expected: 'passes',
      unit: YES_NO,
    },
    {
      label: `${tag}: battery and service dates; registration where it has an identity`,
      expected: 'in date, this boat',
      unit: YES_NO,
    },
  ];
}

function noiseRows(): BlankRow[] {
  return [
    'LED lights (tricolour, deck, cabin)',
    'Solar controller',
    'Inverter and chargers',
    'Plotter, radar and displays',
  ].map((label) => ({
    label,
    expected: 'squelch stays closed',
    unit: YES_NO,
  }));
}
