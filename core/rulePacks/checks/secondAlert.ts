import { adding, cannotTell, doesNotApply, itemSubjects, met, notMet, tagsOf, verb } from '../answers.ts';
import { hasDsc, hfOnAir, ids, standaloneSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { judgedMeans, withBeaconDoubts } from './alertMeans.ts';
import { bySatellite, mfDsc } from './longRange.ts';

/** Another way to alert than the VHF set that every area asks for. */
export function secondAlertA1(input: PackInput): Answer {
  const means = judgedMeans(input);
  const main = means.find(({ means: { radioService }, isFixed }) => radioService === 'vhf-dsc' && isFixed);
  const others = means.filter((each) => each !== main);
  const [best] = others;
  if (!best) {
    return notMet(
      main ? `Beside ${main.means.label} nothing can alert.` : 'Nothing on the drawing can alert.',
      main ? itemSubjects([main.means.itemId]) : [],
    );
  }
  const subjects = itemSubjects([best.means.itemId]);
  if (best.doubt !== '') return cannotTell(`Only ${best.means.label}, and ${best.doubt}.`, subjects);
  const near = best.means.radioService === 'beacon-406' ? ' That it is near the conning position is for the eye.' : '';
  return withBeaconDoubts(input, met(`By ${best.means.label}.${near}`, subjects), [best.means.itemId]);
}

/** An alert by another service than MF. */
export function secondAlertA2(input: PackInput): Answer {
  const beacons = ids(standaloneSets(input, 'beacon-406'));
  if (beacons.length > 0)
    return withBeaconDoubts(input, met(`By ${tagsOf(input, beacons)}.`, itemSubjects(beacons)), beacons);
  const satellite = bySatellite(input, '');
  if (satellite.verdict === 'met') return satellite;
  const hf = ids(hfOnAir(input).filter(hasDsc));
  if (hf.length > 0) return met(`By HF on ${tagsOf(input, hf)}, the same set as for MF.`, itemSubjects(hf));
  return satellite.verdict === 'cannot-tell'
    ? satellite
    : notMet('No beacon, HF selective calling or satellite set on the drawing.');
}

/** The two ways of A3; either is enough, so that the one not taken does not apply. */
export function optionA3(input: PackInput, option: 'satellite' | 'hf'): Answer {
  const own = option === 'satellite' ? satelliteOption(input) : hfOption(input);
  if (own.verdict === 'met') return own;
  const other = option === 'satellite' ? hfOption(input) : satelliteOption(input);
  if (other.verdict !== 'met') return own;
  return doesNotApply(`The other way, by ${option === 'satellite' ? 'HF' : 'satellite'}, is there.`, other.subjects);
}

function satelliteOption(input: PackInput): Answer {
  const terminal = bySatellite(input, 'No satellite set with sky on the drawing.');
  if (terminal.verdict === 'not-met') return terminal;
  const mf = mfDsc(input);
  if (mf.verdict !== 'met') return mf;
  const mfSets = mf.subjects.map(({ id }) => id);
  const beacons = ids(standaloneSets(input, 'beacon-406'));
  // A set for MF here works HF too, so that there is an alert beside satellite and MF even without a beacon.
  const other =
    beacons.length > 0
      ? tagsOf(input, beacons)
      : `HF on ${tagsOf(input, mfSets)}, the same ${verb(mfSets, 'set', 'sets')}`;
  const named = adding(terminal, `MF: ${tagsOf(input, mfSets)}. Beside them: ${other}.`, [
    ...mf.subjects,
    ...itemSubjects(beacons),
  ]);
  return withBeaconDoubts(input, named, beacons);
}

function hfOption(input: PackInput): Answer {
  const hf = mfDsc(input);
  if (hf.verdict !== 'met') return hf;
  const others = judgedMeans(input).filter(
    ({ means: { radioService } }) => radioService === 'beacon-406' || radioService === 'satellite',
  );
  const tags = tagsOf(
    input,
    hf.subjects.map(({ id }) => id),
  );
  // Those nothing is open about come first.
  const [best] = others;
  if (!best)
    return notMet(
      `${tags} ${verb(hf.subjects, 'alerts', 'alert')} by HF; no beacon and no satellite set beside.`,
      hf.subjects,
    );
  const { means, doubt } = best;
  const subjects = [...hf.subjects, ...itemSubjects([means.itemId])];
  if (doubt !== '') return cannotTell(`${tags} by HF; beside it only ${means.label}, and ${doubt}.`, subjects);
  return withBeaconDoubts(input, met(`${tags} by HF and ${means.label} beside it.`, subjects), [means.itemId]);
}

/** In A4 the second alert is by beacon. */
export function hfAndBeacon(input: PackInput): Answer {
  const hf = mfDsc(input);
  if (hf.verdict !== 'met') return hf;
  const beacons = ids(standaloneSets(input, 'beacon-406'));
  const tags = tagsOf(
    input,
    hf.subjects.map(({ id }) => id),
  );
  if (beacons.length === 0) return notMet(`${tags} by HF, but no 406 MHz beacon.`, hf.subjects);
  const given = met(`${tags} by HF and ${tagsOf(input, beacons)}.`, [...hf.subjects, ...itemSubjects(beacons)]);
  return withBeaconDoubts(input, given, beacons);
}
