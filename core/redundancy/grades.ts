import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import type { Grade } from '../model/services.ts';

/** A live grade with the reason it is not full; the reason is empty when it is. */
export interface Graded {
  readonly grade: Exclude<Grade, 'lost'>;
  readonly reason: string;
}

export const FULL: Graded = { grade: 'full', reason: '' };

export function reduced(reason: string): Graded {
  return { grade: 'reduced', reason };
}

/** The worse of two; reasons of equal grades are joined. */
export function worse(a: Graded, b: Graded): Graded {
  if (a.grade === 'full') return b;
  if (b.grade === 'full') return a;
  return reduced(`${a.reason}; ${b.reason}`);
}

/**
 * Full while the feeder, as designed, keeps within the project's limit. The predicted loss counts, not a measured one: the
 * matrix says what the layout can do in good order, and a feeder that measures worse than it should is a finding to mend.
 */
export function feederGrade(project: Project, path: PathBudget): Graded {
  if (path.lossDb <= project.settings.feederLossLimitDb) return FULL;
  return reduced(`the feeder takes ${Math.round(path.lostPercent)} % of the power, more than the limit`);
}

/**
 * Share of the height of the boat's best mounting below which an antenna counts as low. Half the height costs 6 dB over
 * sea (20 log of the height ratio), as much as turning 25 W into 6 W: from there a fixed set reaches little farther than
 * a handheld would from the top. Own rule on that ground; no outside source.
 */
export const LOW_ANTENNA_SHARE = 0.5;

/** Height of the best mounting this boat has, m above the waterline: the highest mast truck, fitting or deckhouse. */
export function bestMountingM(project: Project): number {
  const { masts, fittings, deckhouses } = project.boat;
  return Math.max(
    0,
    ...masts.map((mast) => mast.truckZM),
    ...fittings.map((fitting) => fitting.zTopM),
    ...deckhouses.map((house) => house.zTopM),
  );
}

/** Full while the antenna stands at least half as high as the boat's best mounting would put it. */
export function heightGrade(project: Project, path: PathBudget): Graded {
  if (path.antennaHeightM >= LOW_ANTENNA_SHARE * bestMountingM(project)) return FULL;
  return reduced('its antenna stands less than half as high as the best mounting aboard, so it reaches less far');
}

/** Full when the path is ready; reduced when somebody has to set a switch over first. */
export function handGrade(index: ProjectIndex, path: PathBudget): Graded {
  const [first, ...more] = path.switchIds.map((id) => index.items.get(id)?.tag ?? id);
  if (first === undefined) return FULL;
  return reduced(`${[first, ...more].join(' and ')} must be set over by hand first`);
}
