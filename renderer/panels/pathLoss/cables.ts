import { indexProject } from '../../../core/catalogue/lookup.ts';
import { runLengthM } from '../../../core/links/route.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Part, PartOf } from '../../../core/model/part.ts';
import type { Project, Run } from '../../../core/model/project.ts';
import { coaxLoss } from '../../../core/rf/coax.ts';
import { afterLossW } from '../../../core/rf/decibels.ts';

export interface CableRow {
  readonly cableId: string;
  readonly name: string;
  readonly isFitted: boolean;
  /** Loss of the run alone and of the whole path with this cable, dB. */
  readonly runLossDb: number;
  readonly pathLossDb: number;
  readonly wattsAtAntenna: number | null;
  readonly outsideDiameterMm: number;
  readonly bendMm: number;
  readonly isWithinLimit: boolean;
  /** What speaks against it here, or an empty text. */
  readonly caution: string;
}

export interface CableComparison {
  readonly run: Run;
  readonly lengthM: number;
  readonly rows: readonly CableRow[];
}

/**
 * What every coax would do in a path's longest run, the one that loses least first. All else on the path stays as it is.
 * Null for a path without coax.
 */
export function compareCables(project: Project, path: PathBudget, limitDb: number): CableComparison | null {
  const { runs, parts } = indexProject(project);
  const longest = path.runIds
    .flatMap((id) => runs.get(id) ?? [])
    .filter((run) => isLine(parts.get(run.cableId)))
    .map((run) => ({ run, lengthM: runLengthM(project, run) }))
    .toSorted((a, b) => b.lengthM - a.lengthM)[0];
  if (!longest) return null;
  const { run, lengthM } = longest;
  const now = path.elements.find(({ kind, subject }) => kind === 'cable' && subject.id === run.id)?.lossDb ?? 0;
  const fittedOhm = ohmOf(parts.get(run.cableId));
  const rows = [...parts.values()].filter(isLine).map((cable): CableRow => {
    const { lossDb, extrapolated } = coaxLoss(cable, lengthM, path.frequencyMhz);
    const pathLossDb = path.lossDb - now + lossDb;
    const ohm = cable.figures.impedanceOhm.value;
    return {
      cableId: cable.id,
      name: cable.name,
      isFitted: cable.id === run.cableId,
      runLossDb: lossDb,
      pathLossDb,
      wattsAtAntenna: path.txPowerW === null ? null : afterLossW(path.txPowerW, pathLossDb),
      outsideDiameterMm: cable.figures.outsideDiameterMm.value,
      bendMm: cable.figures.bendOnceMm.value,
      isWithinLimit: pathLossDb <= limitDb,
      caution: [isMatched(ohm, fittedOhm) ? '' : `${ohm} Ω: does not match`, extrapolated ? 'beyond its table' : '']
        .filter(Boolean)
        .join(', '),
    };
  });
  return { run, lengthM, rows: rows.toSorted((a, b) => a.runLossDb - b.runLossDb) };
}

/** A coaxial line; a bare lead-in, which has no loss of its own, is part of the antenna. */
function isLine(part: Part | undefined): part is PartOf<'coax'> {
  return part?.kind === 'coax' && part.figures.lossK1.value + part.figures.lossK2.value > 0;
}

/** 52 ohm on 50 is a VSWR of 1.04, which nobody can tell; 75 on 50 is 1.5. */
const isMatched = (a: number, b: number): boolean => Math.max(a, b) / Math.min(a, b) < 1.1;

const ohmOf = (part: Part | undefined): number => (part?.kind === 'coax' ? part.figures.impedanceOhm.value : 50);
