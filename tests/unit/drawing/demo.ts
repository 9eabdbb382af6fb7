import { readFileSync } from 'node:fs';
import type { Finding } from '../../../core/audit/types.ts';
import { type ProfileOptions, SHOW_ALL } from '../../../core/drawing/options.ts';
import { fitProjection } from '../../../core/drawing/projection.ts';
import { textWidth } from '../../../core/drawing/textWidth.ts';
import type { Shape } from '../../../core/drawing/types.ts';
import { budgetPaths } from '../../../core/links/budget.ts';
import { newProject } from '../../../core/model/defaults.ts';
import { type Project, projectSchema } from '../../../core/model/project.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';

export const DEMOS = ['brannoch-tern', 'pelluna', 'vessarine'] as const;

export function demo(name: (typeof DEMOS)[number]): Project {
  const file = new URL(`../../../assets/demo/${name}.backstay`, import.meta.url);
  return projectSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

/** A remark on each of the first items and runs, so that flags take part in the layout. */
export function remarks(project: Project): readonly Finding[] {
  return [...project.items.slice(0, 7), ...project.runs.slice(0, 3)].map((thing, index) => ({
    key: `key-${index}`,
    ruleId: 'rule',
    severity: 'A',
    mark: `A${index + 1}`,
    title: 'A remark',
    subjects: [{ kind: 'tag' in thing ? 'item' : 'run', id: thing.id }],
    measured: [],
    limit: [],
    authority: { name: '', strength: 'practice' },
    action: [],
    overruled: null,
  }));
}

export function resultsOf(project: Project) {
  return { paths: budgetPaths(project), findings: remarks(project) };
}

export function optionsFor(project: Project, width = 1280, height = 800, textSize = 11): ProfileOptions {
  const projection = fitProjection(project, width, height, textSize, textSize);
  return { width, height, projection, textSize, preferences: METRIC_PREFERENCES, show: SHOW_ALL };
}

/** One boat of each kind, from six numbers. */
export const KINDS = [
  newBoat('sloop', 11.2, 3.6, 2, 17, 1.15),
  newBoat('cutter', 12.8, 3.9, 1.9, 18.5, 1.25),
  newBoat('ketch', 12.4, 3.8, 1.95, 17.2, 1.1),
  newBoat('schooner', 16, 4.4, 2.2, 19, 1.3),
  newBoat('catamaran', 13.5, 7.4, 1.25, 20.6, 1.5),
  newBoat('motor-yacht', 14, 4.3, 1.1, 7.5, 1.5),
  newBoat('trawler', 11, 3.9, 1.2, 6.4, 1.2),
  newBoat('open-boat', 5.8, 2.2, 0.4, 2.4, 0.7),
] as const;

function newBoat(
  kind: Project['boat']['kind'],
  loaM: number,
  beamM: number,
  draughtM: number,
  airDraughtM: number,
  freeboardM: number,
): Project {
  return newProject({ name: `A ${kind}`, kind, loaM, beamM, draughtM, airDraughtM, freeboardM });
}

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Ends of a path's steps; enough for straight outlines and for the corners of curved ones. */
export function pathBounds(d: string): Bounds {
  const numbers = d.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
  const xs = numbers.filter((_, index) => index % 2 === 0);
  const ys = numbers.filter((_, index) => index % 2 === 1);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Box of a line of text by the widths of the drawing's own typeface. */
export function textBounds(shape: Extract<Shape, { kind: 'text' }>): Bounds {
  const width = textWidth(shape.text, shape.size, shape.bold);
  const left = shape.anchor === 'start' ? shape.x : shape.anchor === 'end' ? shape.x - width : shape.x - width / 2;
  return { left, right: left + width, top: shape.y - shape.size * 0.72, bottom: shape.y + shape.size * 0.2 };
}

export const balloonsIn = (shapes: readonly Shape[]) =>
  shapes.filter((shape) => shape.kind === 'circle' && shape.layer === 'marks' && shape.subject?.kind === 'item');

export const runLabelsIn = (shapes: readonly Shape[]) =>
  shapes.filter((shape) => shape.kind === 'text' && shape.layer === 'labels' && shape.subject?.kind === 'run');

export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
