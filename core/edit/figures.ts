import { indexProject } from '../catalogue/lookup.ts';
import { isFigureOf, overrideProblems } from '../document/overrides.ts';
import type { Basis, Figure } from '../model/figure.ts';
import { fieldWords } from '../model/issues.ts';
import type { Part } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { entryOf, isSame, withEntry } from './change.ts';
import { RefusedEdit, requireSound } from './refused.ts';

export interface FigureChange {
  readonly value: number;
  /** Plus or minus, same unit; what the part has when left out. */
  readonly tolerance?: number;
  /** `assumed` when left out: a number typed in is not yet a data sheet or a measurement. */
  readonly basis?: Basis;
  readonly source?: string;
}

/**
 * Gives one item its own value of a figure of its part.
 * @throws RefusedEdit when the part has no such figure or the value is not finite or outside its span
 */
export function setItemFigure(project: Project, itemId: string, key: string, change: FigureChange): Project {
  const { item, part } = knownItem(project, itemId);
  if (!isFigureOf(part, key))
    throw new RefusedEdit(`${item.tag} (${part.name}) has no ${fieldWords(key).words} to set.`);
  const known = item.overrides.figures[key] ?? figureOf(part, key);
  const figure: Figure = {
    value: change.value,
    tolerance: change.tolerance ?? known?.tolerance ?? 0,
    basis: change.basis ?? 'assumed',
    source: change.source ?? 'entered by hand',
  };
  return withOverrides(project, item, part, {
    ...item.overrides,
    figures: { ...item.overrides.figures, [key]: figure },
  });
}

/** Back to the part's own figure. */
export function resetItemFigure(project: Project, itemId: string, key: string): Project {
  const item = entryOf(project, 'items', itemId);
  if (!Object.hasOwn(item.overrides.figures, key)) return project;
  const { [key]: _gone, ...figures } = item.overrides.figures;
  return withEntry(project, 'items', { ...item, overrides: { ...item.overrides, figures } });
}

/**
 * Gives one item its own value of a trait of its part, e.g. the position of a switch.
 * @throws RefusedEdit when the part has no such trait or it cannot have this value
 */
export function setItemTrait(
  project: Project,
  itemId: string,
  key: string,
  value: string | number | boolean | null,
): Project {
  const { item, part } = knownItem(project, itemId);
  const traits = { ...item.overrides.traits, [key]: value };
  // Another position of a switch may close a loop of coax.
  return requireSound(withOverrides(project, item, part, { ...item.overrides, traits }), item.tag);
}

/** Back to the part's own trait. */
export function resetItemTrait(project: Project, itemId: string, key: string): Project {
  const item = entryOf(project, 'items', itemId);
  if (!Object.hasOwn(item.overrides.traits, key)) return project;
  const { [key]: _gone, ...traits } = item.overrides.traits;
  return requireSound(withEntry(project, 'items', { ...item, overrides: { ...item.overrides, traits } }), item.tag);
}

function withOverrides(project: Project, item: Item, part: Part, overrides: Item['overrides']): Project {
  if (isSame(overrides, item.overrides)) return project;
  const problems = overrideProblems(part, overrides);
  if (problems.length > 0) {
    throw new RefusedEdit(`${item.tag}: ${problems.map(({ what, mend }) => `${what} ${mend}`).join(' ')}`);
  }
  return withEntry(project, 'items', { ...item, overrides });
}

function knownItem(project: Project, itemId: string): { item: Item; part: Part } {
  const item = entryOf(project, 'items', itemId);
  const part = indexProject(project).parts.get(item.partId);
  if (part) return { item, part };
  throw new RefusedEdit(
    `${item.tag} is a part this program does not know ("${item.partId}"): choose a known part for it first.`,
  );
}

function figureOf(part: Part, key: string): Figure | undefined {
  const figures: Readonly<Record<string, Figure | undefined>> = part.figures;
  return Object.hasOwn(figures, key) ? figures[key] : undefined;
}
