import { overheadOf } from '../../catalogue/lookup.ts';
import { wayAlongM } from '../../edit/geometry.ts';
import { addItem, setItem, snapToPlace } from '../../edit/items.ts';
import { setRun } from '../../edit/runs.ts';
import { runLengthM } from '../../links/route.ts';
import type { Place } from '../../model/boat.ts';
import type { Item, Project, Run } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { overheadInWords, seesSky } from '../../redundancy/fix.ts';
import { NEW_FEEDER, OPEN_SKY } from '../cautions.ts';
import { newest } from '../ends.ts';
import { cableFor, cableLossDb, layFeeder } from '../feeder.ts';
import { skyPlace } from '../spots.ts';
import { fittedOf, placeWords, runAt, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';

const GNSS_MHZ = 1575.42;
const L_BAND_MHZ = 1621;

/** GNSS and satellite antennas from under metal or carbon to where they see the sky, or an outside one for a set that has it inside. */
export function skyCandidates(survey: Survey): readonly Candidate[] {
  return [...movedAntennas(survey), ...outsideAntennas(survey)];
}

function movedAntennas(survey: Survey): readonly Candidate[] {
  return fittedOf(survey, 'antenna').flatMap(({ item, part }): Candidate[] => {
    const looksUp = part.antennaClass === 'gnss' || part.antennaClass === 'l-band';
    if (!looksUp || seesSky(overheadOf(survey.project, item))) return [];
    const run = (survey.index.runsAtItem.get(item.id) ?? []).find(stands);
    const setId = run && (run.from.itemId === item.id ? run.to.itemId : run.from.itemId);
    const set = setId === undefined ? undefined : survey.index.items.get(setId);
    if (!run || !set) return [];
    const place = skyPlace(survey, set.position);
    if (!place) return [];
    const over = overheadInWords(survey.project, item);
    const frequencyMhz = part.antennaClass === 'gnss' ? GNSS_MHZ : L_BAND_MHZ;
    return [
      {
        id: `open-sky:${item.id}`,
        kind: 'open-sky',
        question: `sky:${item.id}`,
        title: `Move ${item.tag} from under ${over} to ${placeWords(place.name)}`,
        cautions: [OPEN_SKY, NEW_FEEDER],
        subjects: [item, set].map(({ id }) => ({ kind: 'item', id })),
        apply: (project) => movedUnderSky(project, { antenna: item, set, run, place, frequencyMhz }),
      },
    ];
  });
}

interface Moved {
  readonly antenna: Item;
  readonly set: Item;
  readonly run: Run;
  readonly place: Place;
  readonly frequencyMhz: number;
}

/** The antenna at its new place, what was recorded of the old one forgotten; its cable kept where it reaches within the limit, else renewed. */
function movedUnderSky(project: Project, { antenna, set, run, place, frequencyMhz }: Moved): Project {
  const facts = { overhead: undefined, outdoors: undefined };
  const moved = setItem(snapToPlace(project, antenna.id, place.id), antenna.id, { facts });
  const neededM = wayAlongM(place.position, set.position);
  const haveM = runLengthM(project, run);
  const lossDb = cableLossDb(project, run.cableId, haveM, frequencyMhz);
  if (haveM >= neededM && lossDb !== null && lossDb <= project.settings.feederLossLimitDb) return moved;
  const cableId = cableFor(project, neededM, frequencyMhz) ?? run.cableId;
  return setRun(moved, run.id, { cableId, measuredLengthM: neededM });
}

/** Sets with a receiver and its antenna inside, under metal or carbon, that have a socket for one outside. */
function outsideAntennas(survey: Survey): readonly Candidate[] {
  const sets = [...fittedOf(survey, 'radio'), ...fittedOf(survey, 'position-source')];
  return sets.flatMap(({ item, part }): Candidate[] => {
    const port = part.ports.find((each) => each.medium === 'rf' && each.bands.length === 1 && each.bands[0] === 'gnss');
    if (!port || seesSky(overheadOf(survey.project, item))) return [];
    const end = { itemId: item.id, portId: port.id };
    const place = runAt(survey, end) ? null : skyPlace(survey, item.position);
    if (!place) return [];
    const over = overheadInWords(survey.project, item);
    return [
      {
        id: `open-sky:${item.id}`,
        kind: 'open-sky',
        question: `sky:${item.id}`,
        title: `Give ${item.tag}, which is under ${over}, a GNSS antenna at ${placeWords(place.name)}`,
        cautions: [OPEN_SKY, NEW_FEEDER],
        subjects: [{ kind: 'item', id: item.id }],
        apply: (project) => {
          const fitted = addItem(project, { partId: 'antenna-gnss-active', placeId: place.id });
          const from = { itemId: newest(fitted).id, portId: 'feed' };
          return layFeeder(fitted, { from, to: end, structureId: place.structureId, frequencyMhz: GNSS_MHZ });
        },
      },
    ];
  });
}
