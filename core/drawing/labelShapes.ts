import { flagBox, flagShapes } from './findingMarks.ts';
import { LINE_PITCH, nearestOn, type PlacedLabel } from './labelLayout.ts';
import type { ProfileOptions } from './options.ts';
import { labelOpacity } from './runLines.ts';
import { circle, line, text } from './shapes.ts';
import { inkOf, stateOf } from './state.ts';
import type { Shape } from './types.ts';

/** Words of the runs with a paper edge, the hairlines of those that stand apart, and their flags. */
export function drawLabels(labels: readonly PlacedLabel[], options: ProfileOptions): readonly Shape[] {
  return labels.flatMap((label) => labelShapes(label, options));
}

function labelShapes(label: PlacedLabel, options: ProfileOptions): readonly Shape[] {
  const { runId, lines, words, anchor, size, tiedTo, mark, box } = label;
  const u = options.textSize / 11;
  const state = stateOf(options, 'run', runId);
  const subject = { kind: 'run', id: runId } as const;
  const ink = inkOf(state, 'run');
  const opacity = labelOpacity(state);
  const x = anchor === 'start' ? words.left : anchor === 'end' ? words.right : (words.left + words.right) / 2;
  const shapes: Shape[] = lines.map((content, index) =>
    text(
      content,
      { x, y: words.top + size * (0.8 + LINE_PITCH * index) },
      {
        layer: 'labels',
        size: index === 0 ? size : size * 0.95,
        ink,
        anchor,
        bold: index === 0,
        halo: true,
        opacity,
        subject,
      },
    ),
  );
  if (tiedTo) {
    const style = { layer: 'labels', stroke: ink, width: 0.6 * u, opacity } as const;
    shapes.unshift(
      line(tiedTo, nearestOn(words, tiedTo), style),
      circle(tiedTo, 1.2 * u, { ...style, fill: ink, width: 0 }),
    );
  }
  if (mark !== null) {
    const left = anchor === 'end' ? box.left : words.right + 3 * u;
    shapes.push(...flagShapes(mark, flagBox(mark, { x: left, y: words.top + size * 0.45 }, u), u, subject));
  }
  return shapes;
}
