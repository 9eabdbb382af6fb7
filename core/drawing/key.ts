import { indexProject } from '../catalogue/lookup.ts';
import type { Project } from '../model/project.ts';
import type { Box } from './geometry.ts';
import { scaleBarEnd } from './grid.ts';
import type { ProfileOptions } from './options.ts';
import { shortType } from './runLabels.ts';
import { type CableStyle, cableStyle } from './runLines.ts';
import { line, text } from './shapes.ts';
import { fitted, textWidth } from './textWidth.ts';
import type { Ink, Shape } from './types.ts';

interface Entry {
  readonly style: CableStyle;
  readonly ink: Ink;
  readonly words: string;
}

/** What the lines mean, in one row along the foot of the sheet beside the scale bar: only what the drawing has. */
export function drawKey(
  project: Project,
  options: ProfileOptions,
): { readonly shapes: readonly Shape[]; readonly box: Box } {
  const u = options.textSize / 11;
  const size = 9.5 * u;
  const y = options.height - 13.5 * u;
  const shapes: Shape[] = [];
  const startX = scaleBarEnd(options) + 14 * u;
  let x = startX;
  for (const { style, ink, words } of entries(project, options)) {
    const label = fitted(words, size, 150 * u);
    const width = 30 * u + textWidth(label, size) + 16 * u;
    if (x + width > options.width - 8 * u) break;
    shapes.push(
      line(
        { x, y },
        { x: x + 26 * u, y },
        {
          layer: 'backdrop',
          stroke: ink,
          width: style.width * u,
          dash: style.dash?.map((length) => length * u),
        },
      ),
      text(label, { x: x + 30 * u, y: y + size * 0.35 }, { layer: 'backdrop', size, ink: 'grid-text' }),
    );
    x += width;
  }
  return { shapes, box: { left: startX, right: Math.max(startX, x), top: y - 8 * u, bottom: y + 8 * u } };
}

function entries(project: Project, options: ProfileOptions): readonly Entry[] {
  const { parts } = indexProject(project);
  const families = new Map<string, { style: CableStyle; types: Set<string> }>();
  for (const run of project.runs) {
    const part = parts.get(run.cableId);
    const style = cableStyle(part);
    const known = families.get(style.family);
    const type = part ? shortType(part.name) : style.family;
    if (known) known.types.add(type);
    else families.set(style.family, { style, types: new Set([type]) });
  }
  const cables = [...families.values()].map(({ style, types }) => ({
    style,
    ink: 'run' as const,
    words: [...types].join(', '),
  }));
  const feed: Entry = { style: FEED_STYLE, ink: 'feed', words: 'DC feed' };
  const link: Entry = { style: LINK_STYLE, ink: 'link', words: 'data link' };
  return [
    ...cables,
    ...(options.show.feeds && project.feeds.length > 0 ? [feed] : []),
    ...(options.show.links && project.dataLinks.length > 0 ? [link] : []),
  ];
}

/** A feed is a thin unbroken line, a link a dotted one. */
export const FEED_STYLE: CableStyle = { family: 'DC feed', width: 0.9, dash: undefined };
export const LINK_STYLE: CableStyle = { family: 'Data link', width: 1.3, dash: [1.2, 2.6] };
