import { Circle, Group, Line, Rect, RegularPolygon } from 'react-konva';
import { toDrawing } from '../../core/drawing/projection.ts';
import type { Projection } from '../../core/drawing/types.ts';
import type { Project, Subject } from '../../core/model/project.ts';
import { useApp } from '../store/context.ts';
import type { PointPx, Sketch } from '../store/view.ts';
import { rectBetween } from './geometry.ts';
import { itemBounds, portHandles } from './handles.ts';
import type { Palette } from './ShapeNode.tsx';

const still = { listening: false, perfectDrawEnabled: false } as const;

/** Selection, handles and the preview of the gesture under way: everything over the drawing that is not part of it. */
export function Overlay({
  project,
  projection,
  palette,
  hoveredId,
}: {
  project: Project;
  projection: Projection;
  palette: Palette;
  hoveredId: string | null;
}) {
  const selection = useApp((state) => state.selection);
  const sketch = useApp((state) => state.sketch);
  const ids = new Set(selection.filter(({ kind }) => kind === 'item').map(({ id }) => id));
  const withPorts = sketch?.targets ? [] : hoveredId === null ? [...ids] : [...new Set([...ids, hoveredId])];
  return (
    <Group {...still}>
      {selection.map((subject) => (
        <Selected key={`${subject.kind}:${subject.id}`} {...{ project, projection, palette, subject }} />
      ))}
      {withPorts.map((id) => (
        <Ports key={id} {...{ project, projection, palette, itemId: id }} />
      ))}
      {sketch ? <SketchMarks sketch={sketch} palette={palette} /> : null}
    </Group>
  );
}

interface Drawn {
  readonly project: Project;
  readonly projection: Projection;
  readonly palette: Palette;
}

function Selected({ project, projection, palette, subject }: Drawn & { subject: Subject }) {
  if (subject.kind === 'item') {
    const item = project.items.find(({ id }) => id === subject.id);
    if (!item) return null;
    const { x, y, width, height } = itemBounds(project, item, projection);
    const box = { x: x - 3, y: y - 3, width: width + 6, height: height + 6 };
    return <Rect {...still} {...box} stroke={palette['run-selected']} strokeWidth={1.5} dash={[4, 3]} />;
  }
  if (subject.kind === 'run') return <Bends {...{ project, projection, palette, runId: subject.id }} />;
  if (subject.kind === 'place') {
    const place = project.places.find(({ id }) => id === subject.id);
    return place ? <Spot at={toDrawing(projection, place.position)} colour={palette['run-selected']} /> : null;
  }
  return null;
}

function Bends({ project, projection, palette, runId }: Drawn & { runId: string }) {
  const bend = useApp((state) => state.bend);
  const run = project.runs.find(({ id }) => id === runId);
  return run?.via.map(({ position }, index) => {
    const { x, y } = toDrawing(projection, position);
    const isChosen = bend?.runId === runId && bend.index === index;
    return (
      <RegularPolygon
        {...still}
        // biome-ignore lint/suspicious/noArrayIndexKey: a bend is known by its index only
        key={index}
        x={x}
        y={y}
        sides={4}
        radius={6}
        fill={isChosen ? palette['run-selected'] : palette.paper}
        stroke={palette['run-selected']}
        strokeWidth={1.5}
      />
    );
  });
}

/** Port handles: round for RF, square for DC, a diamond for data. */
function Ports({ project, projection, palette, itemId }: Drawn & { itemId: string }) {
  return portHandles(project, itemId, projection).map(({ endpoint, port, at }) => {
    const paint = { ...still, x: at.x, y: at.y, fill: palette.paper, strokeWidth: 1.5 };
    if (port.medium === 'rf') return <Circle key={endpoint.portId} {...paint} radius={4} stroke={palette.run} />;
    const colour = port.medium === 'dc' ? palette.feed : palette.link;
    const rotation = port.medium === 'dc' ? 45 : 0;
    return <RegularPolygon key={endpoint.portId} {...paint} sides={4} radius={5} rotation={rotation} stroke={colour} />;
  });
}

function SketchMarks({ sketch, palette }: { sketch: Sketch; palette: Palette }) {
  const { marquee, line, snap, targets } = sketch;
  return (
    <>
      {targets?.map(({ endpoint, at, fits }) => (
        <Circle
          {...still}
          key={`${endpoint.itemId}.${endpoint.portId}`}
          x={at.x}
          y={at.y}
          radius={fits ? 7 : 3}
          fill={fits ? palette.paper : palette['boat-faint']}
          stroke={fits ? palette.live : palette['boat-faint']}
          strokeWidth={fits ? 2.5 : 1}
        />
      ))}
      {line ? (
        <Line
          {...still}
          points={[line.from.x, line.from.y, line.to.x, line.to.y]}
          stroke={line.fits ? palette.live : palette.ink}
          strokeWidth={2}
          dash={line.fits ? [] : [6, 4]}
        />
      ) : null}
      {snap ? <Spot at={snap.at} colour={palette.accent} /> : null}
      {marquee ? (
        <Rect
          {...still}
          {...rectBetween(marquee.from, marquee.to)}
          stroke={palette.accent}
          strokeWidth={1}
          dash={[4, 3]}
        />
      ) : null}
    </>
  );
}

/** A draughtsman's centre mark. */
function Spot({ at, colour }: { at: PointPx; colour: string }) {
  const paint = { ...still, stroke: colour, strokeWidth: 1.5 };
  return (
    <>
      <Circle {...paint} x={at.x} y={at.y} radius={9} />
      <Line {...paint} points={[at.x - 14, at.y, at.x + 14, at.y]} />
      <Line {...paint} points={[at.x, at.y - 14, at.x, at.y + 14]} />
    </>
  );
}
