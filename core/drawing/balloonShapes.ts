import type { PlacedBalloon } from './balloonLayout.ts';
import { flagShapes } from './findingMarks.ts';
import { along, distance } from './geometry.ts';
import type { ProfileOptions } from './options.ts';
import { circle, line, text } from './shapes.ts';
import { inkOf, stateOf } from './state.ts';
import type { Shape } from './types.ts';

/** Leaders below, then the numbered circles with their flags. */
export function drawBalloons(balloons: readonly PlacedBalloon[], options: ProfileOptions): readonly Shape[] {
  return [
    ...balloons.flatMap((balloon) => leader(balloon, options)),
    ...balloons.flatMap((balloon) => numbered(balloon, options)),
  ];
}

function leader(balloon: PlacedBalloon, options: ProfileOptions): readonly Shape[] {
  const { dot, center, radius, itemId } = balloon;
  const u = options.textSize / 11;
  const state = stateOf(options, 'item', itemId);
  const stroke = inkOf(state, 'ink');
  const style = { layer: 'labels', stroke, width: 0.7 * u, opacity: state.opacity } as const;
  const length = distance(dot, center);
  if (length <= radius) return [];
  return [
    line(dot, along(dot, center, (length - radius) / length), style),
    circle(dot, 1.6 * u, { ...style, fill: stroke, width: 0 }),
  ];
}

function numbered(balloon: PlacedBalloon, options: ProfileOptions): readonly Shape[] {
  const { center, radius, itemId, number, mark, flag } = balloon;
  const u = options.textSize / 11;
  const state = stateOf(options, 'item', itemId);
  const subject = { kind: 'item', id: itemId } as const;
  const ink = inkOf(state, 'ink');
  const size = options.textSize * (number < 100 ? 1 : number < 1000 ? 0.86 : 0.72);
  const style = { layer: 'marks', opacity: state.opacity, subject } as const;
  return [
    circle(center, radius, { ...style, stroke: ink, fill: 'paper', width: (state.selected ? 2 : 1.1) * u }),
    text(
      String(number),
      { x: center.x, y: center.y + size * 0.35 },
      { ...style, size, ink, anchor: 'middle', bold: true },
    ),
    ...(mark !== null && flag ? flagShapes(mark, flag, u, subject) : []),
  ];
}
