import type { PathBudget } from '../../links/types.ts';
import type { Mast } from '../../model/boat.ts';
import type { PartOf } from '../../model/part.ts';
import type { Item } from '../../model/project.ts';
import { type ConductorReach, conductorBeside, type MastPattern, mastPattern } from '../../rf/mastPattern.ts';
import { type CollinearAntenna, collinearGainDbi, collinearLengthM } from '../../rf/pattern.ts';
import { stackOf } from '../../siting/stack.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../../units/constants.ts';
import { q, type RichText } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, vhfBandAntennas } from '../rule.ts';

/** Farther than this from a mast its shadow is 2 dB and less and no longer told of, m. */
const NEAR_MAST_M = 2;
/** What the margin for shadow of mast and rigging does not cover any more, dB. */
const DEEP_DB = 3;
/** Feed resistance off by this ratio either way makes a VSWR of that. */
const MISMATCH = 1.5;
/** Beyond these the class is B. */
const [VERY_DEEP_DB, BAD_MISMATCH] = [6, 2];

export const whipBesideMast: Rule = {
  id: 'whip-beside-mast',
  summary:
    'A VHF or AIS antenna stands beside a mast that shadows it by more than 3 dB or upsets its match; beyond 6 dB or a VSWR of 2 the class is B.',
  severity: 'C',
  authority: AUTHORITIES.mastShadow,
  check: (input) =>
    [...vhfBandAntennas(input)].flatMap(([id, [path]]) => {
      const item = input.index.items.get(id);
      const part = input.index.effective.get(id);
      if (!path || !item || part?.kind !== 'antenna' || part.traits.polarisation !== 'vertical') return [];
      return input.project.boat.masts.flatMap((mast) => {
        const shadow = shadowOf(path, item, part, mast);
        return shadow ? [mastRemark(item, mast, shadow)] : [];
      });
    }),
};

/** What a mast does to an antenna. Without a pattern it ends too near the antenna's middle for the formula. */
interface Shadow {
  readonly apartM: number;
  readonly pattern: MastPattern | null;
}

interface Known {
  readonly mast: Mast;
  readonly shadow: Shadow | null;
}
const cache = new WeakMap<PathBudget, Map<string, Known>>();

/** A budget is a new object whenever its antenna or its place changes, so it and the mast are all this depends on. */
function shadowOf(path: PathBudget, item: Item, part: PartOf<'antenna'>, mast: Mast): Shadow | null {
  const ofPath = cache.get(path) ?? new Map<string, Known>();
  cache.set(path, ofPath);
  const known = ofPath.get(mast.id);
  if (known?.mast === mast) return known.shadow;
  const shadow = reckonShadow(path, item, part, mast);
  ofPath.set(mast.id, { mast, shadow });
  return shadow;
}

const CONDUCTS: ReadonlySet<Mast['material']> = new Set(['aluminium', 'steel', 'carbon']);

function reckonShadow(path: PathBudget, item: Item, part: PartOf<'antenna'>, mast: Mast): Shadow | null {
  const apartM = Math.hypot(item.position.xM - mast.xM, item.position.yM);
  const diameterM = mast.sectionMm / 1000;
  const { frequencyMhz, antennaHeightM } = path;
  const isNear = apartM <= NEAR_MAST_M && apartM > diameterM / 2 && diameterM >= 0.002 && diameterM <= 1;
  if (!isNear || !CONDUCTS.has(mast.material) || !(frequencyMhz >= 30 && frequencyMhz <= 500)) return null;
  const antenna = stackOf(part, frequencyMhz);
  const reach = reachOf(antenna, frequencyMhz, antennaHeightM, mast);
  if (reach === 'clear') return null;
  if (reach === 'at-its-end') return { apartM, pattern: null };
  const pattern = mastPattern({ frequencyMhz, diameterM, axisToAxisM: apartM, antenna });
  return -pattern.leastDb > DEEP_DB || mismatchOf(pattern) > MISMATCH ? { apartM, pattern } : null;
}

function reachOf(antenna: CollinearAntenna, frequencyMhz: number, middleM: number, mast: Mast): ConductorReach {
  const halfM = collinearLengthM(antenna, SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6)) / 2;
  return conductorBeside(
    { lowM: middleM - halfM, highM: middleM + halfM },
    { lowM: Math.min(mast.footZM, mast.truckZM), highM: Math.max(mast.footZM, mast.truckZM) },
  );
}

/** VSWR that the feed resistance alone makes of a good match. */
const mismatchOf = ({ feedRatio }: MastPattern): number => Math.max(feedRatio, 1 / feedRatio);

function mastRemark(item: Item, mast: Mast, { apartM, pattern }: Shadow): Remark {
  const name = mast.name === '' ? 'the mast' : mast.name.toLowerCase();
  const grave = pattern !== null && (-pattern.leastDb > VERY_DEEP_DB || mismatchOf(pattern) > BAD_MISMATCH);
  return {
    subjects: [itemSubject(item.id), { kind: 'structure', id: mast.id }],
    severity: grave ? 'B' : 'C',
    title: pattern ? `${item.tag} stands in the shadow of ${name}` : `${item.tag} stands beside the top of ${name}`,
    measured: [
      q(apartM, 'm', 2),
      ` from its axis${pattern ? ': ' : '.'}`,
      ...(pattern ? shadowText(item, mast, pattern) : []),
    ],
    limit: pattern
      ? ['The real-life margin has 3 dB for mast and rigging. The sum takes the mast as round, upright and alone.']
      : [
          'No figure: the formula needs ',
          q(1, 'm', 0),
          ' of mast above and below the antenna’s middle. Level with the top a mast costs half a decibel, lower down several.',
        ],
    action: [
      'Raise the antenna until its lower end is level with the masthead, where the shadow is gone, or stand it two metres off.',
    ],
  };
}

function shadowText(item: Item, mast: Mast, pattern: MastPattern): RichText {
  const mismatch = mismatchOf(pattern);
  return [
    q(-pattern.leastDb, 'dB', 1),
    ` weaker ${pattern.leastDeg === 180 ? 'over the mast, ' : ''}at `,
    q(bearingOfLeastDeg(item, mast, pattern), 'degree', 0),
    ' from the bow',
    ...(pattern.shadowDeg > 0 ? [', more than 3 dB over ', q(pattern.shadowDeg, 'degree', 0)] : []),
    ...(mismatch > MISMATCH ? ['; its feed is off, VSWR ', q(mismatch, 'ratio', 1), ' and more'] : []),
    '.',
  ];
}

/** Bearing from the bow, clockwise, of the weakest direction; of two alike the one nearer the bow. */
function bearingOfLeastDeg(item: Item, mast: Mast, { leastDeg }: MastPattern): number {
  const away = Math.atan2(item.position.yM * -1, mast.xM - item.position.xM) * (180 / Math.PI);
  const turns = [away + leastDeg, away - leastDeg].map((degrees) => Math.round(((degrees % 360) + 360) % 360) % 360);
  return turns.toSorted((a, b) => Math.min(a, 360 - a) - Math.min(b, 360 - b))[0] ?? 0;
}

/** Marine VHF, where the length of an antenna says what it can do, MHz. */
const VHF_MHZ = 156.8;
const VHF_WAVE_M = SPEED_OF_LIGHT_M_PER_S / (VHF_MHZ * 1e6);
/** A claim may exceed what the length allows by this, dB: measurement and label rounding. */
const CLAIM_DB = 1;
/** Half waves in a tube are up to a tenth shorter than in free space. */
const SHORTENED = 0.9;
/** Half waves farther apart than this gain nothing more. */
const WIDEST_PITCH = 0.9;

/**
 * Most gain an upright antenna of a length can have, dBi: half waves in phase, as many and as far apart as fit; a half-wave antenna
 * below that. @throws RangeError when the length or the wavelength is not above 0
 */
export function lengthLimitedGainDbi(lengthM: number, wavelengthM: number): number {
  if (!(lengthM > 0 && wavelengthM > 0 && Number.isFinite(lengthM) && Number.isFinite(wavelengthM)))
    throw new RangeError('A length and a wavelength must be above 0 m.');
  const wavelengths = lengthM / SHORTENED / wavelengthM;
  let best = collinearGainDbi({ elements: 1, pitchWavelengths: 0.5 });
  for (let elements = 2; elements <= 16; elements += 1) {
    const pitch = Math.min(WIDEST_PITCH, (wavelengths - 0.5) / (elements - 1));
    if (pitch < 0.5) break;
    best = Math.max(best, collinearGainDbi({ elements, pitchWavelengths: pitch }));
  }
  return best;
}

export const antennaClaim: Rule = {
  id: 'antenna-claim',
  summary: 'A VHF antenna’s stated gain or number of half waves is more than its length allows.',
  severity: 'C',
  authority: AUTHORITIES.antennaLength,
  check: (input) =>
    itemsOf(input, 'antenna').flatMap(([item, part]) =>
      part.antennaClass.startsWith('vhf-') && part.figures.lengthM.value > 0 ? claimsOf(item, part) : [],
    ),
};

function claimsOf(item: Item, part: PartOf<'antenna'>): readonly Remark[] {
  const { gainDbi, lengthM, elements } = part.figures;
  const allowedDbi = lengthLimitedGainDbi(lengthM.value, VHF_WAVE_M);
  if (gainDbi.value > allowedDbi + CLAIM_DB)
    return [
      {
        subjects: [itemSubject(item.id)],
        title: `${item.tag} claims more gain than its length allows`,
        measured: [q(gainDbi.value, 'dBi'), ' stated for ', q(lengthM.value, 'm'), '.'],
        limit: ['About ', q(allowedDbi, 'dBi'), ': half waves in phase, as many as fit.'],
        action: [
          'Put in the gain over an isotropic antenna from a measured sheet, or what its length allows: its ranges are too long as they stand. A label in dB is no gain.',
        ],
      },
    ];
  if (!elements) return [];
  const stack = { elements: elements.value, pitchWavelengths: part.figures.pitchWavelengths?.value ?? 0.75 };
  const neededM = stackLengthM(stack);
  if (neededM !== null && neededM * SHORTENED <= lengthM.value + lengthM.tolerance) return [];
  return [
    {
      subjects: [itemSubject(item.id)],
      title: `${item.tag} states half waves it cannot hold`,
      measured: [
        q(stack.elements, 'count'),
        ' half waves at ',
        q(stack.pitchWavelengths, 'ratio', 2),
        ' wavelengths in ',
        q(lengthM.value, 'm'),
        '.',
      ],
      limit:
        neededM === null
          ? ['A whole number from 1 to 16, and 0.5 to 1 wavelength apart.']
          : ['They need ', q(neededM * SHORTENED, 'm'), ' at least.'],
      action: ['Put the number right: its beam, its loss under heel and the coupling to other antennas hang on it.'],
    },
  ];
}

/** Null for an antenna that there is not. */
function stackLengthM(stack: CollinearAntenna): number | null {
  const isSound = Number.isInteger(stack.elements) && stack.elements >= 1 && stack.elements <= 16;
  const isPitch = stack.pitchWavelengths >= 0.5 && stack.pitchWavelengths <= 1;
  return isSound && isPitch ? collinearLengthM(stack, VHF_WAVE_M) : null;
}
