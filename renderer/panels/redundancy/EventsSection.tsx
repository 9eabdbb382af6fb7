import { useState } from 'react';
import { Button } from 'react-aria-components';
import { addOwnEvent, removeOwnEvent, setEventExcluded, setOwnEvent } from '../../../core/edit/redundancy.ts';
import type { OwnEvent, Project, Subject } from '../../../core/model/project.ts';
import type { Redundancy } from '../../../core/redundancy/types.ts';
import { subjectLabel } from '../../../core/report/words.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { TextRow } from '../../ui/TextRow.tsx';

/** Kinds of things that can go down. */
const CAN_BE_HIT: ReadonlySet<Subject['kind']> = new Set([
  'item',
  'run',
  'feed',
  'link',
  'place',
  'structure',
  'compartment',
]);

/** Failures of the user's own, and those that are left out. */
export function EventsSection({ project, redundancy }: { project: Project; redundancy: Redundancy }) {
  const store = useAppStore();
  const { events } = project.settings.redundancy;
  return (
    <section className="panel-section">
      <h3 className="heading">Failures of your own</h3>
      <NewEvent project={project} />
      {events.map((event) => (
        <OwnEventCard key={event.id} project={project} event={event} />
      ))}
      {redundancy.excluded.length > 0 ? (
        <>
          <h4 className="heading">Left out</h4>
          <p className="small soft">Not tried, and said so on the install sheet.</p>
          <ul className="plain-list">
            {redundancy.excluded.map(({ id, label }) => (
              <li key={id} className="row-between">
                <span>{label}</span>
                <Button
                  className="button"
                  aria-label={`Try again: ${label}`}
                  onPress={() =>
                    store.getState().edit(`${label}: tried again`, (before) => setEventExcluded(before, id, false))
                  }
                >
                  Try again
                </Button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}

function NewEvent({ project }: { project: Project }) {
  const store = useAppStore();
  const selection = useApp((state) => state.selection);
  const hits = selection.filter(({ kind }) => CAN_BE_HIT.has(kind));
  const [label, setLabel] = useState('');
  if (hits.length === 0) {
    return (
      <p className="small soft">
        Select on the drawing or in the outline what goes down together (a locker, a bundle of cables, one breaker
        panel), then give the failure its name here.
      </p>
    );
  }
  const name = label.trim() === '' ? `${namesOf(project, hits)} fail together` : label.trim();
  const add = (): void => {
    const before = store.getState().project.settings.redundancy.events.length;
    const isDone = store
      .getState()
      .edit(`Failure added: ${name}`, (known) => addOwnEvent(known, { label: name, hits: [...hits], note: '' }));
    const made = store.getState().project.settings.redundancy.events[before];
    if (isDone && made) store.getState().showEvent(`own:${made.id}`);
    setLabel('');
  };
  return (
    <div className="card own-event">
      <p className="small">
        Selected: <strong>{namesOf(project, hits)}</strong>
      </p>
      <TextRow label="Name of the failure" value={label} onCommit={setLabel} />
      <div className="row">
        <Button className="button button--primary" onPress={add}>
          Add as a failure
        </Button>
      </div>
    </div>
  );
}

function OwnEventCard({ project, event }: { project: Project; event: OwnEvent }) {
  const store = useAppStore();
  const { id, label, hits } = event;
  return (
    <div className="card own-event">
      <TextRow
        label="Name"
        value={label}
        isRequired
        onCommit={(text) =>
          store.getState().edit('Failure renamed', (before) => setOwnEvent(before, id, { label: text }))
        }
      />
      <p className="small">Takes down {namesOf(project, hits)}.</p>
      <div className="row">
        <Button className="button" onPress={() => store.getState().showEvent(`own:${id}`)}>
          Show on the drawing
        </Button>
        <Button
          className="button"
          onPress={() => store.getState().edit(`Failure taken away: ${label}`, (before) => removeOwnEvent(before, id))}
        >
          Take away
        </Button>
      </div>
    </div>
  );
}

const MOST_NAMES = 4;

function namesOf(project: Project, hits: readonly Subject[]): string {
  const names = hits.slice(0, MOST_NAMES).map((hit) => subjectLabel(project, hit));
  const more = hits.length - names.length;
  return more > 0 ? `${names.join(', ')} and ${more} more` : names.join(', ');
}
