import type { Project } from '../model/project.ts';
import { drawBackdrop } from './backdrop.ts';
import { balloonNumber } from './balloons.ts';
import type { DrawnResults, ProfileOptions } from './options.ts';
import { toDrawing } from './projection.ts';
import { circle, text } from './shapes.ts';
import type { Drawing, Shape } from './types.ts';

/** The whole profile: backdrop below, installation above. */
export function drawProfile(project: Project, results: DrawnResults, options: ProfileOptions): Drawing {
  return {
    width: options.width,
    height: options.height,
    projection: options.projection,
    shapes: [...drawBackdrop(project, options), ...drawInstallation(project, results, options)],
  };
}

/** Items, runs, balloons, labels and marks. */
export function drawInstallation(project: Project, _results: DrawnResults, options: ProfileOptions): readonly Shape[] {
  const { projection, textSize } = options;
  return project.items.flatMap((item) => {
    const at = toDrawing(projection, item.position);
    const subject = { kind: 'item', id: item.id } as const;
    return [
      circle(at, 11 * (textSize / 11), { layer: 'marks', stroke: 'ink', fill: 'paper', width: 1, subject }),
      text(String(balloonNumber(project, item.id)), at, {
        layer: 'marks',
        size: textSize,
        ink: 'ink',
        anchor: 'middle',
      }),
    ];
  });
}
