import type { Project } from '../model/project.ts';
import type { Drawing } from './types.ts';

/** Size of a plan view, drawing units. */
export interface PlanOptions {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
}

/** The deck seen from above, bow to the right, with the items on it. */
export function drawPlan(_project: Project, options: PlanOptions): Drawing {
  return { width: options.width, height: options.height, projection: { originX: 0, originY: 0, scale: 1 }, shapes: [] };
}
