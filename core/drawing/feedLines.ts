import type { Endpoint, Project } from '../model/project.ts';
import type { Point } from './geometry.ts';
import { FEED_STYLE, LINK_STYLE } from './key.ts';
import type { ProfileOptions } from './options.ts';
import { isNearSheet } from './runLines.ts';
import { path, pathOf } from './shapes.ts';
import { inkOf, stateOf } from './state.ts';
import { onSheet, type PlacedSymbol, type SymbolLayout } from './symbols.ts';
import type { Shape } from './types.ts';

/** A DC feed or a data link as its line lies on the sheet. */
export interface ServiceLine {
  readonly kind: 'feed' | 'link';
  readonly id: string;
  readonly number: string;
  readonly points: readonly Point[];
}

/**
 * Feeds and links that are shown. Their routes are not in the document, so they are drawn square, as in a wiring
 * diagram, and not as where they lie in the boat.
 */
export function serviceLines(project: Project, layout: SymbolLayout, options: ProfileOptions): readonly ServiceLine[] {
  const u = options.textSize / 11;
  const feeds = options.show.feeds ? project.feeds : [];
  const links = options.show.links ? project.dataLinks : [];
  return [
    ...feeds.map(({ id, number, from, to }, index) => {
      const points = squareRoute(layout, from, to, (8 + 3 * (index % 4)) * u, 'below');
      return { kind: 'feed' as const, id, number, points };
    }),
    ...links.map(({ id, number, from, to }, index) => {
      const points = squareRoute(layout, from, to, (7 + 3 * (index % 4)) * u, 'beside');
      return { kind: 'link' as const, id, number, points };
    }),
  ].filter(({ points }) => points.length > 1 && isNearSheet(points, options));
}

function squareRoute(
  layout: SymbolLayout,
  from: Endpoint,
  to: Endpoint,
  clear: number,
  way: 'below' | 'beside',
): readonly Point[] {
  const a = portOn(layout.get(from.itemId), from.portId);
  const b = portOn(layout.get(to.itemId), to.portId);
  if (!a || !b) return [];
  if (way === 'below') {
    const y = Math.max(a.y, b.y) + clear;
    return [a, { x: a.x, y }, { x: b.x, y }, b];
  }
  const x = Math.min(a.x, b.x) - clear;
  return [a, { x, y: a.y }, { x, y: b.y }, b];
}

function portOn(symbol: PlacedSymbol | undefined, portId: string): Point | undefined {
  return symbol && onSheet(symbol, symbol.glyph.ports.get(portId) ?? { x: 0, y: 0 });
}

/** One feed or link in its own style (see the key). */
export function drawServiceLine(service: ServiceLine, options: ProfileOptions): Shape {
  const u = options.textSize / 11;
  const state = stateOf(options, service.kind, service.id);
  const style = service.kind === 'link' ? LINK_STYLE : FEED_STYLE;
  const dash = style.dash ?? (state.fate === 'lost' ? [2, 3] : undefined);
  return path(pathOf(service.points), {
    layer: 'installation',
    stroke: inkOf(state, service.kind),
    width: style.width * u,
    dash: dash?.map((length) => length * u),
    opacity: state.opacity,
    subject: { kind: service.kind, id: service.id },
  });
}
