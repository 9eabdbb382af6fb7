import type Konva from 'konva';
import { memo, type RefObject, useEffect, useMemo, useState } from 'react';
import { Layer, Stage } from 'react-konva';
import { backdropKey, drawBackdrop } from '../../core/drawing/backdrop.ts';
import { type ProfileOptions, SHOW_ALL, subjectKey } from '../../core/drawing/options.ts';
import { PALETTES } from '../../core/drawing/palette.ts';
import { drawInstallation } from '../../core/drawing/profile.ts';
import type { Projection, Shape } from '../../core/drawing/types.ts';
import type { Project } from '../../core/model/project.ts';
import { useThemeName } from '../app/useTheme.ts';
import { useApp } from '../store/context.ts';
import { useAssessment, useFailureView } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import type { SizePx } from './camera.ts';
import { TEXT_SIZE_PX } from './handles.ts';
import { Overlay } from './Overlay.tsx';
import { DRAWING_FONT, type Palette, ShapeNode } from './ShapeNode.tsx';
import { UnderlayImage } from './UnderlayImage.tsx';

interface StageProps {
  readonly stageRef: RefObject<Konva.Stage | null>;
  readonly size: SizePx;
  readonly projection: Projection;
  readonly hoveredId: string | null;
}

/** The canvas in three layers: the boat (never hit), the installation, and what lies over it while working. */
export function ProfileStage({ stageRef, size, projection, hoveredId }: StageProps) {
  const project = useApp(shownProject);
  const palette = PALETTES[useThemeName()];
  const options = useProfileOptions(project, size, projection);
  const assessment = useAssessment();
  const rigging = backdropKey(project);
  // Only the boat, its wires and the view decide the backdrop, so that dragging a part leaves it alone.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what else is in the project and the options does not show in the backdrop
  const backdrop = useMemo(
    () => drawBackdrop(project, options),
    [project.boat, rigging, size, projection, options.preferences, options.failure],
  );
  const installation = useMemo(() => drawInstallation(project, assessment, options), [project, assessment, options]);
  const fontVersion = useDrawingFont();
  return (
    <div aria-hidden="true" key={fontVersion}>
      <Stage ref={stageRef} width={size.width} height={size.height}>
        <Layer listening={false}>
          <UnderlayImage project={project} projection={projection} />
          <Shapes shapes={backdrop} palette={palette} />
        </Layer>
        <Layer>
          <Shapes shapes={installation} palette={palette} />
        </Layer>
        <Layer listening={false}>
          <Overlay project={project} projection={projection} palette={palette} hoveredId={hoveredId} />
        </Layer>
      </Stage>
    </div>
  );
}

function useProfileOptions(project: Project, size: SizePx, projection: Projection): ProfileOptions {
  const selection = useApp((state) => state.selection);
  const preferences = useApp((state) => state.preferences);
  const failure = useFailureView();
  // Places are targets: they show while something is carried that can snap to one, or when one is selected.
  const showPlaces = useApp(
    ({ sketch, selection: chosen }) =>
      (sketch !== null && !sketch.targets && !sketch.marquee) || chosen.some(({ kind }) => kind === 'place'),
  );
  return useMemo(
    () => ({
      ...size,
      projection,
      textSize: TEXT_SIZE_PX,
      preferences,
      selection: new Set(selection.map(subjectKey)),
      ...(failure ? { failure: { ...failure, mastsDown: mastsDown(project, failure.lost) } } : {}),
      show: { ...SHOW_ALL, places: showPlaces },
    }),
    [size, projection, preferences, selection, failure, project, showPlaces],
  );
}

function mastsDown(project: Project, lost: ReadonlySet<string>): ReadonlySet<string> {
  return new Set(project.boat.masts.map(({ id }) => id).filter((id) => lost.has(`structure:${id}`)));
}

const Shapes = memo(function Shapes({ shapes, palette }: { shapes: readonly Shape[]; palette: Palette }) {
  return shapes.map((shape, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no identity of their own; equal ones are skipped by ShapeNode
    <ShapeNode key={i} shape={shape} palette={palette} />
  ));
});

/** Changes once the drawing's typeface is there: a canvas does not draw itself anew when a font arrives. */
function useDrawingFont(): number {
  const [version, setVersion] = useState(0);
  useEffect(() => {
    let isOn = true;
    const faces = [400, 600].map((weight) => document.fonts.load(`${weight} 12px "${DRAWING_FONT}"`));
    void Promise.all(faces).then(() => isOn && setVersion(1));
    return () => {
      isOn = false;
    };
  }, []);
  return version;
}
