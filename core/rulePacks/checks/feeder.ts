import { runLengthM } from '../../links/route.ts';
import type { PathBudget, PathElement } from '../../links/types.ts';
import type { Subject } from '../../model/project.ts';
import { lostPercent } from '../../rf/decibels.ts';
import { q, type RichText } from '../../units/quantity.ts';
import {
  adding,
  cannotTell,
  doesNotApply,
  itemSubject,
  itemSubjects,
  listInWords,
  met,
  notMet,
  tagOf,
  tagsOf,
} from '../answers.ts';
import { OSR_CABLE_TABLE, RULE_FIGURES } from '../figures.ts';
import { ids, radioSets, vhfOnAir, vhfPaths, vhfPowerW, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { mastheadOf } from './emergencyAerial.ts';

/** Share of the power that a loss takes, per cent; written out here because rule packs stand on links and not on core/rf. */
/** The feeder that a race rule looks at: that of a masthead antenna before others, and of those the one that loses least. */
function mainFeeder(input: PackInput): PathBudget | undefined {
  const paths = vhfOnAir(input).flatMap((set) => vhfPaths(input, set));
  const isAloft = ({ antennaId }: PathBudget): boolean => {
    const antenna = input.index.items.get(antennaId);
    return antenna !== undefined && mastheadOf(input, antenna) !== undefined;
  };
  const aloft = paths.filter(isAloft);
  return [...(aloft.length > 0 ? aloft : paths)].sort((a, b) => a.lossDb - b.lossDb)[0];
}

const pathSubjects = ({ radioId, antennaId, runIds, deviceIds }: PathBudget): readonly Subject[] => [
  itemSubject(radioId),
  ...runIds.map((id): Subject => ({ kind: 'run', id })),
  ...itemSubjects([...deviceIds, antennaId]),
];

const isDevice = ({ kind }: PathElement): boolean => kind === 'device';
const lossOf = (elements: readonly PathElement[]): number => elements.reduce((sum, { lossDb }) => sum + lossDb, 0);

/** Loss of the feeder against the share of power that may go in it: as measured where it was, else as reckoned. */
export function feederLoss(input: PackInput): Answer {
  const path = mainFeeder(input);
  if (!path) return doesNotApply('No fixed VHF set is joined to an antenna.');
  const limit = RULE_FIGURES.osrFeederPercent;
  const words: RichText = [...lossWords(input, path), ' Allowed: ', q(limit, 'percent'), '.'];
  const subjects = pathSubjects(path);
  const { measuredLossDb } = path;
  if (measuredLossDb !== null) return (lostPercent(measuredLossDb) <= limit ? met : notMet)(words, subjects);
  if (path.lostPercent <= limit) return withinTolerance(path, limit, words);
  const devices = path.elements.filter(isDevice);
  const cablePercent = lostPercent(path.lossDb - lossOf(devices));
  if (cablePercent > limit) return notMet(words, subjects);
  const named = tagsOf(input, [...new Set(devices.map(({ subject }) => subject.id))]);
  const alone: RichText = ['Cable, plugs and joints alone: ', q(cablePercent, 'percent')];
  return adding(cannotTell(words, subjects), [...alone, `. Whether ${named} counts as feeder is for the scrutineer.`]);
}

/** A loss reckoned under the limit is met only where its whole tolerance is. */
function withinTolerance(path: PathBudget, limit: number, words: RichText): Answer {
  const mostPercent = lostPercent(path.lossDb + path.toleranceDb);
  if (mostPercent <= limit) return met(words, pathSubjects(path));
  const most: RichText = [' With its tolerance it may lose ', q(mostPercent, 'percent'), ': measure it.'];
  return cannotTell([...words, ...most], pathSubjects(path));
}

function lossWords(input: PackInput, path: PathBudget): RichText {
  const { lossDb, toleranceDb, measuredLossDb } = path;
  const reckoned: RichText = [
    `${tagOf(input, path.radioId)} to ${tagOf(input, path.antennaId)}: reckoned `,
    q(lossDb, 'dB'),
    ' ± ',
    q(toleranceDb, 'dB'),
    ', ',
    q(path.lostPercent, 'percent'),
    ' of the power',
  ];
  if (measuredLossDb === null) return [...reckoned, '.'];
  return [
    ...reckoned,
    '; measured ',
    q(measuredLossDb, 'dB'),
    ', ',
    q(lostPercent(measuredLossDb), 'percent'),
    ', which counts.',
  ];
}

/** The table of cables that the same rule takes as good enough, beside the reckoned loss. */
export function feederTable(input: PackInput): Answer {
  const path = mainFeeder(input);
  if (!path) return doesNotApply('No fixed VHF set is joined to an antenna.');
  const runs = path.runIds.flatMap((id) => input.index.runs.get(id) ?? []);
  const rows = runs.map(({ cableId }) => OSR_CABLE_TABLE.find(({ partId }) => partId === cableId));
  const lengthM = runs.reduce((sum, run) => sum + runLengthM(input.project, run), 0);
  const reckoned: RichText = ['Reckoned, it loses ', q(path.lostPercent, 'percent'), '.'];
  const subjects = pathSubjects(path);
  const unlisted = runs
    .filter((_, at) => !rows[at])
    .map(({ cableId }) => input.index.parts.get(cableId)?.name ?? cableId);
  if (unlisted.length > 0) {
    return doesNotApply([`The table says nothing of ${listInWords([...new Set(unlisted)])}. `, ...reckoned], subjects);
  }
  const shortest = rows.flatMap((row) => row ?? []).sort((a, b) => a.upToM - b.upToM)[0];
  if (!shortest) return doesNotApply('No cable in the way.', subjects);
  const words: RichText = [
    q(lengthM, 'm'),
    ` of cable, ${shortest.name} in it, which the table allows to `,
    q(shortest.upToM, 'm', 0),
    '. ',
  ];
  return (lengthM <= shortest.upToM ? met : notMet)([...words, ...reckoned], subjects);
}

export function ratedPower(input: PackInput): Answer {
  const sets = vhfSets(input);
  if (sets.length === 0) return doesNotApply('No fixed VHF set on the drawing.');
  const strong = sets.find((set) => vhfPowerW(set) >= RULE_FIGURES.osrVhfW);
  const [best] = [...sets].sort((a, b) => vhfPowerW(b) - vhfPowerW(a));
  const shown = strong ?? best;
  if (!shown) return doesNotApply('No fixed VHF set on the drawing.');
  const words: RichText = [`${shown.item.tag} is rated `, q(vhfPowerW(shown), 'W', 0), '.'];
  return (strong ? met : notMet)(words, [itemSubject(shown.item.id)]);
}

/** An AIS set shares the masthead antenna by a splitter, or has an antenna of its own, long and high enough. */
export function aisAntenna(input: PackInput): Answer {
  const sets = ids(radioSets(input, 'ais-class-a', 'ais-class-b-cs', 'ais-class-b-so'));
  if (sets.length === 0) return doesNotApply('No AIS transponder on the drawing.');
  const path = input.paths.find(({ radioId, service }) => sets.includes(radioId) && service === 'ais');
  if (!path) return notMet(`${tagsOf(input, sets)} is joined to no antenna.`, itemSubjects(sets));
  const splitter = path.elements.find((each) => isDevice(each) && isSplitter(input, each.subject.id));
  const antenna = input.index.items.get(path.antennaId);
  if (splitter && antenna && mastheadOf(input, antenna)) {
    return cannotTell(
      [
        `Shares ${antenna.tag} through ${tagOf(input, splitter.subject.id)}, which takes `,
        q(splitter.lossDb, 'dB'),
        '; the text as seen gives no figure for “low loss”.',
      ],
      pathSubjects(path),
    );
  }
  const sharers = input.paths
    .filter(({ radioId, antennaId }) => antennaId === path.antennaId && !sets.includes(radioId))
    .map(({ radioId }) => radioId);
  if (splitter && antenna && sharers.length > 0) {
    return notMet(
      `Shares ${antenna.tag} with ${tagsOf(input, [...new Set(sharers)])}, and ${antenna.tag} is not at a masthead: neither of the two ways.`,
      pathSubjects(path),
    );
  }
  return ownAisAntenna(input, path);
}

function isSplitter(input: PackInput, itemId: string): boolean {
  const part = input.index.effective.get(itemId);
  return part?.kind === 'inline' && ['splitter-active', 'splitter-passive', 'diplexer'].includes(part.deviceClass);
}

function ownAisAntenna(input: PackInput, path: PathBudget): Answer {
  const antenna = input.index.items.get(path.antennaId);
  const part = input.index.effective.get(path.antennaId);
  if (!antenna || part?.kind !== 'antenna') return notMet('No antenna.');
  const lengthM = part.figures.lengthM.value;
  const heightM = antenna.position.zM;
  const { osrAisLengthM, osrAisHeightM } = RULE_FIGURES;
  const words: RichText = [
    `${antenna.tag} is `,
    q(lengthM, 'm', 2),
    ' long, its foot ',
    q(heightM, 'm'),
    ' above the waterline.',
  ];
  return (lengthM >= osrAisLengthM && heightM >= osrAisHeightM ? met : notMet)(words, [itemSubject(antenna.id)]);
}
