import type { Mast } from '../../model/boat.ts';
import type { Item } from '../../model/project.ts';
import { structuresUnder } from '../../redundancy/components.ts';
import { emergencyAntennas, emergencyFit } from '../../redundancy/emergency.ts';
import { q, type RichText } from '../../units/quantity.ts';
import { cannotTell, doesNotApply, itemSubject, itemSubjects, met, notMet, tagsOf, verb } from '../answers.ts';
import { ids, vhfOnAir, vhfPaths, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';

const SAILING_KINDS: ReadonlySet<string> = new Set(['sloop', 'cutter', 'ketch', 'schooner', 'catamaran']);

export interface AerialDemand {
  /** Only a mast that carries sails counts. */
  readonly sails: boolean;
  /** Bracket and cable stay rigged. */
  readonly rigged: boolean;
}

/** An emergency VHF antenna, where the one in use falls with the mast. */
export function emergencyAerial(input: PackInput, { sails, rigged }: AerialDemand): Answer {
  const antennas = voiceAntennas(input);
  if (antennas.length === 0) return doesNotApply('No fixed VHF set is joined to an antenna.');
  const masts = input.project.boat.masts.filter((mast) => !sails || carriesSails(input, mast));
  const onMast = antennas.filter((item) => standsOnOne(input, item, masts));
  if (onMast.length === 0) {
    const named = tagsOf(input, ids(antennas));
    return doesNotApply(`${named}: on no mast${sails ? ' that carries sails' : ''}.`, itemSubjects(ids(antennas)));
  }
  const off = antennas.filter((item) => !onMast.includes(item));
  if (off.length > 0) {
    const sets = vhfOnAir(input).filter((set) =>
      vhfPaths(input, set).some(({ antennaId }) => ids(off).includes(antennaId)),
    );
    return met(
      `${tagsOf(input, ids(off))} ${verb(off, 'is', 'are')} off the mast and wired to ${tagsOf(input, ids(sets))}.`,
      itemSubjects(ids(off)),
    );
  }
  return stowed(input, onMast, rigged);
}

/** Antennas that fixed VHF sets may send into. */
function voiceAntennas(input: PackInput): readonly Item[] {
  const found = new Set(vhfSets(input).flatMap((set) => vhfPaths(input, set).map(({ antennaId }) => antennaId)));
  return [...found].flatMap((id) => input.index.items.get(id) ?? []);
}

const carriesSails = ({ project }: PackInput, mast: Mast): boolean =>
  mast.boomZM !== null || SAILING_KINDS.has(project.boat.kind);

const standsOnOne = ({ project }: PackInput, item: Item, masts: readonly Mast[]): boolean => {
  const under = structuresUnder(project, item);
  return masts.some(({ id }) => under.includes(id));
};

function stowed(input: PackInput, onMast: readonly Item[], rigged: boolean): Answer {
  const kept = emergencyAntennas(input.project);
  const main = `${tagsOf(input, ids(onMast))} ${verb(onMast, 'falls', 'fall')} with the mast`;
  if (kept.length === 0)
    return notMet(`${main}, and no emergency antenna is on the drawing.`, itemSubjects(ids(onMast)));
  const subjects = itemSubjects([...ids(kept), ...ids(onMast)]);
  if (rigged)
    return notMet(
      `${tagsOf(input, ids(kept))} ${verb(kept, 'is', 'are')} stowed and not joined by a cable that stays.`,
      subjects,
    );
  const fits = kept.flatMap((antenna) =>
    vhfSets(input).map(({ item: set }) => ({ antenna, set, fit: emergencyFit(input.project, antenna, set) })),
  );
  const good = fits.find(({ fit }) => fit.verdict === 'fits');
  if (good) {
    return met(
      `${good.antenna.tag}: its lead reaches ${good.set.tag} and its plug fits.`,
      itemSubjects([good.antenna.id, good.set.id]),
    );
  }
  const open = fits.find(({ fit }) => fit.verdict === 'unknown');
  if (open) {
    return cannotTell(
      `${main}; length and plug of the lead of ${open.antenna.tag} are not recorded: measure and try it.`,
      subjects,
    );
  }
  const near = [...fits].sort((a, b) => a.fit.distanceM - b.fit.distanceM)[0];
  return near
    ? notMet(misfit(near), [itemSubject(near.antenna.id), itemSubject(near.set.id)])
    : notMet(`${main}.`, subjects);
}

function misfit({ antenna, set, fit }: { antenna: Item; set: Item; fit: ReturnType<typeof emergencyFit> }): RichText {
  const wrong = [
    ...(fit.verdict === 'wrong-plug'
      ? []
      : [`a lead of `, q(fit.leadLengthM ?? 0, 'm'), ' for ', q(fit.distanceM, 'm')]),
    ...(fit.verdict === 'both' ? [' and '] : []),
    ...(fit.verdict === 'too-short'
      ? []
      : [`a ${(fit.leadConnector ?? '').toUpperCase()} plug for a ${fit.socket.toUpperCase()} socket`]),
  ];
  return [`${antenna.tag} cannot be joined to ${set.tag}: `, ...wrong, '.'];
}

/** How near the head of a mast an antenna must stand to count as at the masthead, m. Own rule, no source. */
const AT_HEAD_M = 1;

/** Mast at whose head an item stands. */
export function mastheadOf(input: PackInput, item: Item): Mast | undefined {
  const under = structuresUnder(input.project, item);
  return input.project.boat.masts.find(
    ({ id, truckZM }) => under.includes(id) && Math.abs(item.position.zM - truckZM) <= AT_HEAD_M,
  );
}

export function mastheadAntenna(input: PackInput): Answer {
  const { masts } = input.project.boat;
  if (masts.length === 0) return doesNotApply('No mast on the drawing.');
  const antennas = voiceAntennas(input);
  if (antennas.length === 0) return notMet('No fixed VHF set is joined to an antenna.');
  const aloft = antennas.find((item) => mastheadOf(input, item));
  if (aloft)
    return met(
      `${aloft.tag}, at the head of ${mastheadOf(input, aloft)?.name ?? 'the mast'}.`,
      itemSubjects([aloft.id]),
    );
  return notMet(
    `${tagsOf(input, ids(antennas))} ${verb(antennas, 'stands', 'stand')} at no masthead.`,
    itemSubjects(ids(antennas)),
  );
}

/** Share of the highest mounting from which an antenna counts as up there. Own rule, no source. */
const HIGH_SHARE = 0.9;

/** As high as practicable: at the boat's highest mounting, or plainly low; between them is for the eye. */
export function aerialsHigh(input: PackInput, bestM: number, lowShare: number): Answer {
  const antennas = voiceAntennas(input);
  if (antennas.length === 0) return notMet('No fixed VHF set is joined to an antenna.');
  const [top] = [...antennas].sort((a, b) => b.position.zM - a.position.zM);
  if (!top) return notMet('No antenna.');
  const height: RichText = [
    `${top.tag} stands at `,
    q(top.position.zM, 'm'),
    '; the highest mounting aboard is at ',
    q(bestM, 'm'),
    '.',
  ];
  const subjects = [itemSubject(top.id)];
  if (top.position.zM >= HIGH_SHARE * bestM) return met(height, subjects);
  if (top.position.zM < lowShare * bestM) return notMet(height, subjects);
  return cannotTell([...height, ' Whether higher is practicable is for the eye.'], subjects);
}
