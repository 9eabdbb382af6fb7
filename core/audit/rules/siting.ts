import { overheadOf } from '../../catalogue/lookup.ts';
import type { PathBudget } from '../../links/types.ts';
import type { Item } from '../../model/project.ts';
import { overheadInWords, seesSky } from '../../redundancy/fix.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { distanceM, itemSubject, itemsOf, listInWords, tagOf, vhfBandAntennas } from '../rule.ts';

/** Ship guidance for an AIS antenna, m (SN/Circ.227, 2.2.1), and what small craft are asked to keep. */
const AIS_FROM_METAL_M = 2;
const AIS_FROM_RADAR_M = 3;
const SAME_LEVEL_M = 2;
const SHIP_SPACING_M = 10;
const SMALL_CRAFT_M = 1;

export const aisNearMetal: Rule = {
  id: 'ais-near-metal',
  summary:
    'The AIS antenna is nearer to metal or to a radar than the ship guide asks; within one metre the class is B.',
  severity: 'C',
  authority: AUTHORITIES.aisSiting,
  check: (input) =>
    aisAntennas(input).flatMap((antenna) => {
      const metalM = antenna.facts.nearestMetalM ?? Number.POSITIVE_INFINITY;
      const radar = nearestRadar(input, antenna);
      const nearMetal = metalM < AIS_FROM_METAL_M;
      const nearRadar = radar !== null && radar.gapM < AIS_FROM_RADAR_M;
      if (!nearMetal && !nearRadar) return [];
      const closest = Math.min(metalM, radar?.gapM ?? Number.POSITIVE_INFINITY);
      return [
        {
          subjects: [itemSubject(antenna.id), ...(nearRadar && radar ? [itemSubject(radar.item.id)] : [])],
          severity: closest < SMALL_CRAFT_M ? 'B' : 'C',
          title: `${antenna.tag} stands close to metal`,
          measured: [
            ...(nearMetal ? [q(metalM, 'm'), ' from metal'] : []),
            ...(nearMetal && nearRadar ? [', '] : []),
            ...(nearRadar && radar ? [q(radar.gapM, 'm'), ` from radar ${radar.item.tag}`] : []),
            '.',
          ],
          limit: [
            'Ship guide: ',
            q(AIS_FROM_METAL_M, 'm', 0),
            ' from metal and ',
            q(AIS_FROM_RADAR_M, 'm', 0),
            ' from a radar, out of its beam.',
          ],
          action: ['Give the AIS antenna a pole of its own, higher or farther off.'],
        },
      ];
    }),
};

function aisAntennas(input: AuditInput): readonly Item[] {
  return [...vhfBandAntennas(input)]
    .filter(([, paths]) => paths.some((path) => path.service === 'ais'))
    .flatMap(([id]) => input.index.items.get(id) ?? []);
}

function nearestRadar(input: AuditInput, antenna: Item): { item: Item; gapM: number } | null {
  let nearest: { item: Item; gapM: number } | null = null;
  for (const [item, part] of itemsOf(input, 'equipment')) {
    if (part.equipmentClass !== 'radar') continue;
    const gapM = distanceM(item.position, antenna.position);
    if (!nearest || gapM < nearest.gapM) nearest = { item, gapM };
  }
  return nearest;
}

interface Pair {
  readonly a: Item;
  readonly b: Item;
  readonly gapM: number;
  /** One carries voice transmissions, the other an AIS receiver. */
  readonly mixed: boolean;
}

/** Pairs of VHF-band antennas on one level, nearer than the ship guide asks. */
function levelPairs(input: AuditInput): readonly Pair[] {
  const antennas = [...vhfBandAntennas(input)];
  return antennas.flatMap(([idA, pathsA], index) =>
    antennas.slice(index + 1).flatMap(([idB, pathsB]) => {
      const a = input.index.items.get(idA);
      const b = input.index.items.get(idB);
      const [heightA, heightB] = [pathsA[0]?.antennaHeightM, pathsB[0]?.antennaHeightM];
      if (!a || !b || a === b || heightA === undefined || heightB === undefined) return [];
      const gapM = Math.hypot(a.position.xM - b.position.xM, a.position.yM - b.position.yM, heightA - heightB);
      if (Math.abs(heightA - heightB) >= SAME_LEVEL_M || gapM >= SHIP_SPACING_M) return [];
      return [{ a, b, gapM, mixed: has(pathsA, 'vhf-voice') !== has(pathsB, 'vhf-voice') }];
    }),
  );
}

function has(paths: readonly PathBudget[], service: PathBudget['service']): boolean {
  return paths.some((path) => path.service === service);
}

/** Too near: under a metre for any two, and under the ship guide's vertical gap for a 25 W set beside an AIS receiver. */
function isTooNear(pair: Pair): boolean {
  return pair.gapM < SMALL_CRAFT_M || (pair.mixed && pair.gapM < SAME_LEVEL_M);
}

export const antennaTooNear: Rule = {
  id: 'antenna-too-near',
  summary: 'A VHF antenna stands within two metres of an AIS antenna on one level, or within one metre of any other.',
  severity: 'B',
  authority: AUTHORITIES.aisSiting,
  check: (input) =>
    levelPairs(input)
      .filter(isTooNear)
      .map(({ a, b, gapM, mixed }) => ({
        subjects: [itemSubject(a.id), itemSubject(b.id)],
        title: `${a.tag} and ${b.tag} stand too close together`,
        measured: [
          q(gapM, 'm'),
          ' apart on one level',
          mixed ? '; one transmits voice beside the other’s AIS receiver.' : '.',
        ],
        limit: [
          'Two antennas one above the other: ',
          q(SAME_LEVEL_M, 'm', 0),
          '; on one level the ship guide asks ',
          q(SHIP_SPACING_M, 'm', 0),
          ', small craft ',
          q(SMALL_CRAFT_M, 'm', 0),
          '.',
        ],
        action: [
          'Put one of them higher or farther off; a vertical gap helps most. Then listen on AIS while the VHF transmits.',
        ],
      })),
};

export const antennaSpacing: Rule = {
  id: 'antenna-spacing',
  summary: 'VHF-band antennas on one level: good for small craft, below the ship guide.',
  severity: 'C',
  authority: AUTHORITIES.smallCraftSpacing,
  check: (input) => {
    const pairs = levelPairs(input).filter((pair) => !isTooNear(pair));
    if (pairs.length === 0) return [];
    const ids = [...new Set(pairs.flatMap(({ a, b }) => [a.id, b.id]))];
    const closest = pairs.reduce((least, pair) => (pair.gapM < least.gapM ? pair : least));
    return [
      {
        subjects: ids.map(itemSubject),
        title: 'Antenna spacing: good for small craft, below the ship guide',
        measured: [
          `${listInWords(ids.map((id) => tagOf(input, id)))} on one level; ${closest.a.tag} and ${closest.b.tag} `,
          q(closest.gapM, 'm'),
          ' apart.',
        ],
        limit: [
          'Small craft ',
          q(SMALL_CRAFT_M, 'm', 0),
          '; ship guide ',
          q(SHIP_SPACING_M, 'm', 0),
          ', which a boat this size can seldom keep.',
        ],
        action: ['Nothing needs doing. Where one is moved for another reason, move it up rather than along.'],
      },
    ];
  },
};

export const noSky: Rule = {
  id: 'satellite-no-sky',
  summary: 'A satellite antenna is fitted under metal or carbon.',
  severity: 'B',
  authority: AUTHORITIES.clearSky,
  check: (input) =>
    satelliteAntennas(input)
      .filter((item) => !seesSky(overheadOf(input.project, item)))
      .map((item) => ({
        subjects: [itemSubject(item.id)],
        title: `${item.tag} sees no sky`,
        measured: [`${item.tag} is under ${overheadInWords(input.project, item)}.`],
        limit: ['Clear sky down to the horizon.'],
        action: ['Move it into the open, where nothing stands above it; keep its cable short and of low loss.'],
      })),
};

function satelliteAntennas(input: AuditInput): readonly Item[] {
  const antennas = itemsOf(input, 'antenna')
    .filter(([, part]) => part.antennaClass === 'l-band')
    .map(([item]) => item);
  const terminals = itemsOf(input, 'radio')
    .filter(([, part]) => part.traits.integralAntenna && /^(l-band|broadband)/.test(part.radioClass))
    .map(([item]) => item);
  return [...antennas, ...terminals];
}

/** A pole hides two degrees or less from this many of its diameters off: 1 / (2 tan 1 degree) = 28.65, printed as 29. */
const POLE_DIAMETERS = 29;

export const poleShadow: Rule = {
  id: 'pole-shadow',
  summary: 'A pole stands nearer to a satellite antenna than 29 times its diameter.',
  severity: 'B',
  authority: AUTHORITIES.poleShadow,
  check: (input) =>
    input.project.items.flatMap((item) => {
      const { shadowPoleDiameterM: diameterM, shadowPoleDistanceM: foundM } = item.facts;
      if (item.status === 'remove' || diameterM === undefined || foundM === undefined) return [];
      const neededM = POLE_DIAMETERS * diameterM;
      return foundM < neededM ? [shadowRemark(item, diameterM, foundM, neededM)] : [];
    }),
};

function shadowRemark(item: Item, diameterM: number, foundM: number, neededM: number): Remark {
  const hiddenDeg = (2 * Math.atan(diameterM / (2 * foundM)) * 180) / Math.PI;
  return {
    subjects: [itemSubject(item.id)],
    title: `A pole shadows ${item.tag}`,
    measured: [
      'Pole of ',
      q(diameterM, 'm', 2),
      ' at ',
      q(foundM, 'm', 1),
      ' hides ',
      q(hiddenDeg, 'degree', 1),
      ' of the horizon.',
    ],
    limit: ['At least ', q(neededM, 'm', 1), ' off, 29 diameters, so that it hides no more than ', q(2, 'degree'), '.'],
    action: ['Move the antenna or the pole. Until then expect drop-outs on the bearings behind it.'],
  };
}

/** Inside and outside antenna of a repeater nearer than this may hear each other, m. Common practice, no source. */
const REPEATER_GAP_M = 3;

export const repeaterFeedback: Rule = {
  id: 'repeater-feedback',
  summary: 'The inside and outside antennas of a cellular repeater are within three metres of each other.',
  severity: 'B',
  authority: AUTHORITIES.repeater,
  check: (input) =>
    itemsOf(input, 'radio').flatMap(([item, part]) => {
      if (part.radioClass !== 'cellular-repeater') return [];
      const ids = [...new Set(input.paths.filter((path) => path.radioId === item.id).map((path) => path.antennaId))];
      const [a, b] = ids.flatMap((id) => input.index.items.get(id) ?? []);
      if (!a || !b) return [];
      const gapM = distanceM(a.position, b.position);
      return gapM < REPEATER_GAP_M ? [feedbackRemark(item, a, b, gapM)] : [];
    }),
};

function feedbackRemark(set: Item, a: Item, b: Item, gapM: number): Remark {
  return {
    subjects: [itemSubject(set.id), itemSubject(a.id), itemSubject(b.id)],
    title: `${set.tag} may feed back on itself`,
    measured: [`${a.tag} and ${b.tag} are `, q(gapM, 'm'), ' apart.'],
    limit: ['At least ', q(REPEATER_GAP_M, 'm', 0), ', or what its manual asks; a metal deck between them helps.'],
    action: [
      'Move the outside antenna away. A repeater that feeds back turns itself down and may disturb the network.',
    ],
  };
}
