import { formatText } from '../units/format.ts';
import { q } from '../units/quantity.ts';
import { type Metre, straight } from './curve.ts';
import type { ProfileOptions } from './options.ts';
import { at, drawn, type Pen } from './pen.ts';
import { path, text } from './shapes.ts';
import type { Shape } from './types.ts';

/** Length of a ripple on the water in the boat, m, and its height. */
const RIPPLE_M = 0.5;
const RIPPLE_HEIGHT_M = 0.035;

/** Water in the flooded compartments: from the sole up to its level, rippled on top, and how high it stands. */
export function drawFlood(options: ProfileOptions, pen: Pen): readonly Shape[] {
  const { water } = options.failure ?? {};
  if (!water) return [];
  const { levelZM } = water;
  const wet = water.spans.filter(({ soleZM }) => soleZM < levelZM);
  const pools = wet.map(({ xForeM, xAftM, soleZM }) => {
    const pool = [...ripples(xForeM, xAftM, levelZM), [xAftM, soleZM] as const, [xForeM, soleZM] as const];
    return path(drawn(pen.projection, straight(pool), true), {
      layer: 'boat',
      stroke: 'water',
      width: 0.8 * pen.u,
      fill: 'water',
      opacity: 0.32,
    });
  });
  const [deepest] = [...wet].sort((a, b) => a.soleZM - b.soleZM);
  if (!deepest) return pools;
  const below = at(pen, [(deepest.xForeM + deepest.xAftM) / 2, deepest.soleZM]);
  const size = options.textSize;
  const words = formatText(['water to ', q(levelZM, 'm', 2)], options.preferences);
  return [
    ...pools,
    text(
      words,
      { x: below.x, y: below.y + 1.1 * size },
      { layer: 'labels', size, ink: 'water', anchor: 'middle', halo: true },
    ),
  ];
}

function ripples(xForeM: number, xAftM: number, levelZM: number): readonly Metre[] {
  const count = Math.max(2, 2 * Math.round((xAftM - xForeM) / RIPPLE_M));
  return Array.from(
    { length: count + 1 },
    (_, i): Metre => [xForeM + ((xAftM - xForeM) * i) / count, levelZM + (i % 2 === 0 ? 0 : RIPPLE_HEIGHT_M)],
  );
}
