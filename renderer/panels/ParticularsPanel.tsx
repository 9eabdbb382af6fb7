import { type RefObject, useEffect, useRef } from 'react';
import type { Project, Subject } from '../../core/model/project.ts';
import { useApp } from '../store/context.ts';
import { shownProject } from '../store/store.ts';
import { BoatView } from './particulars/BoatView.tsx';
import { FeedView } from './particulars/FeedView.tsx';
import { ItemView } from './particulars/ItemView.tsx';
import { LinkView } from './particulars/LinkView.tsx';
import { RunView } from './particulars/RunView.tsx';
import { SeveralView } from './particulars/SeveralView.tsx';
import { CompartmentView, PlaceView, StructureView } from './particulars/SpotViews.tsx';
import './particulars.css';

/** Every property of what is selected, with its unit, its allowed range and how it is known; of the boat when nothing is. */
export function ParticularsPanel() {
  const project = useApp(shownProject);
  const selection = useApp((state) => state.selection);
  const panel = useRef<HTMLDivElement>(null);
  useCommitBeforeLeaving(panel);
  const [only] = selection;
  return (
    <div className="panel particulars" ref={panel}>
      {only && selection.length > 1 ? (
        <SeveralView project={project} selection={selection} />
      ) : (
        // A key per subject, so that what is being typed about one thing never turns up at another.
        <One key={only ? `${only.kind}:${only.id}` : 'boat'} project={project} subject={only} />
      )}
    </div>
  );
}

function One({ project, subject }: { project: Project; subject: Subject | undefined }) {
  if (!subject) return <BoatView project={project} />;
  const { boat } = project;
  const byId = <T extends { readonly id: string }>(list: readonly T[], kind: Subject['kind']): T | undefined =>
    subject.kind === kind ? list.find(({ id }) => id === subject.id) : undefined;
  const item = byId(project.items, 'item');
  if (item) return <ItemView project={project} item={item} />;
  const run = byId(project.runs, 'run');
  if (run) return <RunView project={project} run={run} />;
  const feed = byId(project.feeds, 'feed');
  if (feed) return <FeedView project={project} feed={feed} />;
  const link = byId(project.dataLinks, 'link');
  if (link) return <LinkView project={project} link={link} />;
  const place = byId(project.places, 'place');
  if (place) return <PlaceView project={project} place={place} />;
  const structure = byId([...boat.masts, ...boat.fittings], 'structure');
  if (structure) return <StructureView project={project} structure={structure} />;
  const compartment = byId(boat.compartments, 'compartment');
  if (compartment) return <CompartmentView project={project} compartment={compartment} />;
  return <BoatView project={project} />;
}

/**
 * A press outside the panel leaves the field being typed in before it does anything else. Otherwise a press on the drawing
 * would select another thing, and the field would be gone before it could commit.
 */
function useCommitBeforeLeaving(panel: RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const handlePress = (event: PointerEvent): void => {
      const focused = document.activeElement;
      const isInside = event.target instanceof Node && panel.current?.contains(event.target);
      if (!isInside && focused instanceof HTMLElement && panel.current?.contains(focused)) focused.blur();
    };
    document.addEventListener('pointerdown', handlePress, { capture: true });
    return () => document.removeEventListener('pointerdown', handlePress, { capture: true });
  }, [panel]);
}
