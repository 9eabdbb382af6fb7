import { Button } from 'react-aria-components';
import { addedSubjects, copyItems } from '../../../core/edit/copy.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import type { Subject } from '../../../core/model/project.ts';
import { useAppStore } from '../../store/context.ts';
import { useAssessment } from '../../store/derived.ts';
import { findingsAbout, servicesLostWith, servicesUsing } from './reckon.ts';

/** Remarks about the selected thing, with the way to the panel that explains them. */
export function FindingsAbout({ subject }: { subject: Subject }) {
  const store = useAppStore();
  const findings = findingsAbout(useAssessment(), subject);
  return (
    <section className="panel-section" aria-label="Findings">
      <div className="panel-head">
        <h3 className="heading">Findings</h3>
        {findings.length === 0 ? null : (
          <Button className="button link small" onPress={() => store.getState().showPanel('findings')}>
            Read them in Findings
          </Button>
        )}
      </div>
      {findings.length === 0 ? <p className="small soft">No remark about this.</p> : null}
      <ul className="plain-list">
        {findings.map(({ key, mark, severity, title }) => (
          <li key={key} className="small">
            <span className={`badge badge--${severity.toLowerCase()}`}>{mark}</span> {title}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What fails with the selected thing: services it takes away alone, and those that only lose one of their ways. */
export function HangsOn({ subject }: { subject: Subject }) {
  const assessment = useAssessment();
  const lost = servicesLostWith(assessment, subject);
  const weaker = servicesUsing(assessment, subject).filter((name) => !lost.includes(name));
  return (
    <section className="panel-section" aria-label="What hangs on it">
      <h3 className="heading">What hangs on it</h3>
      {lost.length > 0 ? (
        <p className="small">
          <span className="grade grade--lost">single point</span> If this fails, these are lost: {lost.join('; ')}.
        </p>
      ) : null}
      {weaker.length > 0 ? <p className="small">Used by, with another way left: {weaker.join('; ')}.</p> : null}
      {lost.length === 0 && weaker.length === 0 ? (
        <p className="small soft">No service depends on it as drawn.</p>
      ) : null}
    </section>
  );
}

/** Takes the thing off the boat. What is still in use is refused with the reason. */
export function RemoveButton({ subject, name }: { subject: Subject; name: string }) {
  const store = useAppStore();
  return (
    <Button
      className="button button--danger"
      onPress={() => store.getState().edit(`${name} deleted`, (project) => removeSubjects(project, [subject]))}
    >
      Delete {name}
    </Button>
  );
}

/** Copies the selected items, with the lines wholly between them, beside themselves; the copies are then selected. */
export function DuplicateButton() {
  const store = useAppStore();
  const duplicate = (): void => {
    const { project, selection, edit, select } = store.getState();
    const ids = selection.filter(({ kind }) => kind === 'item').map(({ id }) => id);
    const label = ids.length === 1 ? 'Item copied' : `${ids.length} items copied`;
    if (edit(label, (before) => copyItems(before, ids))) {
      select(addedSubjects(project, store.getState().project).filter(({ kind }) => kind === 'item'));
    }
  };
  return (
    <Button className="button" onPress={duplicate}>
      Duplicate
    </Button>
  );
}
