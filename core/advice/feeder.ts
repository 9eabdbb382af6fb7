import { indexProject } from '../catalogue/lookup.ts';
import { distanceM } from '../edit/geometry.ts';
import { addBend } from '../edit/route.ts';
import { addRun, setRun } from '../edit/runs.ts';
import type { Position } from '../model/boat.ts';
import type { PartOf } from '../model/part.ts';
import type { Endpoint, Item, Project } from '../model/project.ts';
import { findStructure } from '../redundancy/components.ts';

/** Left over at the ends of a new run for plugs and service loops, m. Common practice, no source. */
const SLACK_M = 0.5;
/** Share of the feeder limit a new run may take: the rest is for plugs and ageing. Own rule, no source. */
const SHARE_OF_LIMIT = 0.8;
/** Thinnest and thickest cable for a new feeder, mm outside: what plugs, glands and mast conduits take. Common practice. */
const THINNEST_MM = 4.9;
const THICKEST_MM = 11;

/** Bends of a new cable: down inside what carries the antenna, then along the boat, then across to the set. */
function bendsTo(project: Project, from: Position, structureId: string | null, to: Position): Position[] {
  const foot = footOf(project, from, structureId);
  const corner = { xM: to.xM, yM: foot.yM, zM: foot.zM };
  return [foot, corner].filter((spot, index, all) => !isNear(spot, all[index - 1] ?? from) && !isNear(spot, to));
}

function footOf(project: Project, from: Position, structureId: string | null): Position {
  const structure = structureId === null ? undefined : findStructure(project, structureId);
  if (!structure) return { ...from, zM: Math.min(from.zM, project.boat.freeboardMidM) };
  if ('footZM' in structure) return { xM: structure.xM, yM: 0, zM: structure.footZM };
  return { xM: from.xM, yM: from.yM, zM: Math.min(from.zM, structure.zBaseM) };
}

const isNear = (a: Position, b: Position): boolean => distanceM(a, b) < 0.2;

/** Length of a line over its bends, slack included, m. */
function lengthOver(points: readonly Position[]): number {
  return points.reduce((sumM, point, index) => sumM + distanceM(points[index - 1] ?? point, point), SLACK_M);
}

/**
 * The thinnest 50 ohm cable that keeps a new feeder within four fifths of the project's limit, the best of equal
 * thickness; where none does, the one that loses least. Undefined where there is no such cable.
 */
export function cableFor(project: Project, lengthM: number, frequencyMhz: number): string | undefined {
  const lossDb = (cable: PartOf<'coax'>): number => coaxLossDb(cable, lengthM, frequencyMhz);
  const cables = [...indexProject(project).parts.values()]
    .filter((part): part is PartOf<'coax'> => part.kind === 'coax')
    .filter(({ figures }) => figures.impedanceOhm.value === 50 && figures.lossK1.value > 0)
    .filter(({ figures }) => figures.maxFrequencyMhz.value >= frequencyMhz)
    .filter(
      ({
        figures: {
          outsideDiameterMm: { value },
        },
      }) => value >= THINNEST_MM && value <= THICKEST_MM,
    )
    .sort((a, b) => lossDb(a) - lossDb(b));
  const within = cables.filter((cable) => lossDb(cable) <= SHARE_OF_LIMIT * project.settings.feederLossLimitDb);
  const thickness = (cable: PartOf<'coax'>): number => Math.round(cable.figures.outsideDiameterMm.value);
  // Sorting keeps the order of equals, so that of one thickness the best comes first.
  return (within.toSorted((a, b) => thickness(a) - thickness(b))[0] ?? cables[0])?.id;
}

/** Loss of a cable by its id, dB >= 0; null for a cable that is not known. */
export function cableLossDb(project: Project, cableId: string, lengthM: number, frequencyMhz: number): number | null {
  const part = indexProject(project).parts.get(cableId);
  return part?.kind === 'coax' ? coaxLossDb(part, lengthM, frequencyMhz) : null;
}

/** k1 √f + k2 f per 100 m, f in MHz, as the parts list states it at 20 °C: enough to choose by; the budget reckons closer. */
function coaxLossDb({ figures }: PartOf<'coax'>, lengthM: number, frequencyMhz: number): number {
  return ((figures.lossK1.value * Math.sqrt(frequencyMhz) + figures.lossK2.value * frequencyMhz) * lengthM) / 100;
}

export interface NewFeeder {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly structureId: string | null;
  readonly frequencyMhz: number;
}

/** Draws a new feeder along the boat, of the cable it needs. @throws RefusedEdit as `addRun` */
export function layFeeder(project: Project, { from, to, structureId, frequencyMhz }: NewFeeder): Project {
  const [a, b] = [itemOf(project, from), itemOf(project, to)];
  const bends = a && b ? bendsTo(project, a.position, structureId, b.position) : [];
  const lengthM = a && b ? lengthOver([a.position, ...bends, b.position]) : 0;
  const cableId = cableFor(project, lengthM, frequencyMhz);
  const drawn = addRun(project, { from, to, ...(cableId === undefined ? {} : { cableId }) });
  const runId = drawn.runs.at(-1)?.id ?? '';
  const bent = bends.reduce((current, position, index) => addBend(current, runId, { position }, index), drawn);
  return setRun(bent, runId, { slackM: SLACK_M });
}

const itemOf = (project: Project, end: Endpoint): Item | undefined => indexProject(project).items.get(end.itemId);
