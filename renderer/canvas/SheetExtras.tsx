import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { PALETTES } from '../../core/drawing/palette.ts';
import { drawPlan } from '../../core/drawing/plan.ts';
import type { Project } from '../../core/model/project.ts';
import { ActionButton } from '../app/ActionItem.tsx';
import { actionById } from '../app/actions.ts';
import { useThemeName } from '../app/useTheme.ts';
import { portWords } from '../commands/words.ts';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import type { Sketch } from '../store/view.ts';
import { eventSentence } from './eventSentence.ts';
import type { PortHandle } from './handles.ts';
import { SvgDrawing } from './SvgDrawing.tsx';

/** What lies over the sheet: zoom, plan view, the failure banner, hints and the tip at the pointer. */
export function SheetExtras({ hoveredPort }: { hoveredPort: PortHandle | null }) {
  const isPlanShown = useApp((state) => state.isPlanShown);
  return (
    <>
      <div className="sheet-zoom">
        <ActionButton action={actionById('zoom-in')} icon="plus" />
        <ActionButton action={actionById('zoom-out')} icon="minus" />
        <ActionButton action={actionById('fit')} icon="fit" />
      </div>
      <div className="sheet-top">
        {isPlanShown ? <PlanInset /> : null}
        <EmptyHint />
      </div>
      <Tip hoveredPort={hoveredPort} />
    </>
  );
}

/** Wide enough to read and no wider: larger on a large sheet, and as high as the boat is beamy. */
function planSize(boat: Project['boat'], sheetWidth: number) {
  const width = sheetWidth > 700 ? 280 : 190;
  const textSize = sheetWidth > 700 ? 9 : 7;
  const u = textSize / 11;
  const height = Math.round((boat.beamM / boat.loaM) * (width - 60 * u) + 44 * u);
  return { width, height: Math.min(width, Math.max(64, height)), textSize };
}

function PlanInset() {
  const project = useApp(shownProject);
  const sheetWidth = useApp((state) => state.sheet?.size.width ?? 0);
  const theme = useThemeName();
  const plan = useMemo(() => drawPlan(project, planSize(project.boat, sheetWidth)), [project, sheetWidth]);
  return (
    <figure className="sheet-plan">
      <SvgDrawing drawing={plan} palette={PALETTES[theme]} label={`Plan view of ${project.boat.name}`} />
    </figure>
  );
}

/** Which failure is shown, above the sheet so that it covers nothing of the boat. */
export function EventBanner() {
  const eventId = useApp((state) => state.eventId);
  const showEvent = useApp((state) => state.showEvent);
  const { redundancy } = useAssessment();
  const row = eventId === null ? undefined : redundancy.matrix.find(({ event }) => event.id === eventId);
  if (!row || row.event.kind === 'none') return null;
  return (
    <div className="sheet-banner" role="status">
      <span>
        <strong>{row.event.label}</strong>. {eventSentence(redundancy, row)}
      </span>
      <Button className="button" onPress={() => showEvent(null)}>
        Show intact boat (Esc)
      </Button>
    </div>
  );
}

/** What to do next while there is little on the drawing. */
function EmptyHint() {
  const items = useApp((state) => state.project.items.length);
  const lines = useApp((state) => state.project.runs.length);
  if (items === 0) {
    return (
      <p className="sheet-empty">
        Drag a part from the Parts list onto the boat, or choose one there and press Enter. Start with a radio and its
        antenna.
      </p>
    );
  }
  if (items > 1 && lines === 0) {
    return (
      <p className="sheet-empty">
        Point at a part to see its ports, then drag from an antenna socket to another to draw a cable run. By keyboard:
        select a part and press C.
      </p>
    );
  }
  return null;
}

function Tip({ hoveredPort }: { hoveredPort: PortHandle | null }) {
  const sketch = useApp((state) => state.sketch);
  const project = useApp(shownProject);
  const tip = sketch?.tip ?? snapTip(sketch) ?? (hoveredPort && !sketch ? portTip(project, hoveredPort) : null);
  if (!tip) return null;
  return (
    <div className="sheet-tip" data-refusal={tip.refusal} style={{ left: tip.at.x, top: tip.at.y }}>
      {tip.text}
    </div>
  );
}

type TipText = NonNullable<Sketch['tip']>;

function snapTip(sketch: Sketch | null): TipText | null {
  const snap = sketch?.snap;
  return snap && snap.name !== '' ? { at: snap.at, text: `At ${snap.name}`, refusal: false } : null;
}

const DRAG_WORDS = { rf: 'draw a cable run', dc: 'draw a DC feed', data: 'draw a data link' } as const;

function portTip(project: Project, { endpoint, port, at }: PortHandle): TipText {
  return {
    at,
    text: `${portWords(project, endpoint)}: drag to another port to ${DRAG_WORDS[port.medium]}`,
    refusal: false,
  };
}
