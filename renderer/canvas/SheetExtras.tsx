import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { PALETTES } from '../../core/drawing/palette.ts';
import { drawPlan } from '../../core/drawing/plan.ts';
import type { Projection } from '../../core/drawing/types.ts';
import { ActionButton } from '../app/ActionItem.tsx';
import { actionById } from '../app/actions.ts';
import { useThemeName } from '../app/useTheme.ts';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { eventSentence } from './eventSentence.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { SvgDrawing } from './SvgDrawing.tsx';

/** What lies over the sheet: zoom, scale bar, plan view, the failure banner, hints and the tip at the pointer. */
export function SheetExtras({ projection }: { projection: Projection }) {
  return (
    <>
      <div className="sheet-zoom">
        <ActionButton action={actionById('zoom-in')} icon="plus" />
        <ActionButton action={actionById('zoom-out')} icon="minus" />
        <ActionButton action={actionById('fit')} icon="fit" />
      </div>
      <ScaleBar pxPerM={projection.scale} />
      <PlanInset />
      <EventBanner />
      <EmptyHint />
      <Tip />
    </>
  );
}

function PlanInset() {
  const project = useApp(shownProject);
  const theme = useThemeName();
  const plan = useMemo(() => drawPlan(project, { width: 210, height: 84, textSize: 9 }), [project]);
  return (
    <figure className="sheet-plan">
      <SvgDrawing drawing={plan} palette={PALETTES[theme]} label={`Plan view of ${project.boat.name}`} />
      <figcaption>Plan</figcaption>
    </figure>
  );
}

function EventBanner() {
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

function Tip() {
  const tip = useApp((state) => state.sketch?.tip ?? null);
  const snap = useApp((state) => (state.sketch?.tip ? null : (state.sketch?.snap ?? null)));
  const shown = tip ?? (snap && snap.name !== '' ? { at: snap.at, text: `At ${snap.name}`, refusal: false } : null);
  if (!shown) return null;
  return (
    <div className="sheet-tip" data-refusal={shown.refusal} style={{ left: shown.at.x, top: shown.at.y }}>
      {shown.text}
    </div>
  );
}
