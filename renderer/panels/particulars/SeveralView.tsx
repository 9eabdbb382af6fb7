import { Button } from 'react-aria-components';
import { setDataLink, setFeed } from '../../../core/edit/feeds.ts';
import { setItem } from '../../../core/edit/items.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { setRun } from '../../../core/edit/runs.ts';
import type { Project, Status, Subject } from '../../../core/model/project.ts';
import { subjectLabel } from '../../../core/report/words.ts';
import { useApp } from '../../store/context.ts';
import { Jump, useEdit, WordChoice } from './fields.tsx';
import { commonStatus, countWords, hasStatus } from './reckon.ts';
import { DuplicateButton } from './Shared.tsx';
import { STATUSES } from './words.ts';

/** What can be said and done about several things at once. */
export function SeveralView({ project, selection }: { project: Project; selection: readonly Subject[] }) {
  const edit = useEdit();
  const select = useApp((state) => state.select);
  return (
    <>
      <header>
        <h2 className="title">{selection.length} selected</h2>
        <p className="small soft">{countWords(selection)}</p>
      </header>
      {selection.some(hasStatus) ? <StatusOfAll project={project} selection={selection} /> : null}
      <section className="panel-section" aria-label="Selected">
        <h3 className="heading">Selected</h3>
        <p className="small chosen-list">
          {selection.map((subject) => (
            <Jump key={`${subject.kind}:${subject.id}`} subject={subject}>
              {subjectLabel(project, subject)}
            </Jump>
          ))}
        </p>
      </section>
      <section className="panel-section" aria-label="Tools">
        <div className="row">
          {selection.some(({ kind }) => kind === 'item') ? <DuplicateButton /> : null}
          <Button className="button" onPress={() => select([])}>
            Select nothing
          </Button>
          <Button
            className="button button--danger"
            onPress={() => edit(`${selection.length} things deleted`, (before) => removeSubjects(before, selection))}
          >
            Remove all
          </Button>
        </div>
      </section>
    </>
  );
}

function StatusOfAll({ project, selection }: { project: Project; selection: readonly Subject[] }) {
  const edit = useEdit();
  const subjects = selection.filter(hasStatus);
  return (
    <section className="panel-section" aria-label="Status">
      <div className="particulars-fields particulars-fields--wide">
        <WordChoice
          label={subjects.length === selection.length ? 'Status of all' : `Status of ${countWords(subjects)}`}
          words={STATUSES}
          value={commonStatus(project, subjects)}
          onChange={(status) =>
            edit(`Status of ${subjects.length} changed`, (before) =>
              subjects.reduce((current, subject) => withStatusOf(current, subject, status), before),
            )
          }
        />
      </div>
    </section>
  );
}

function withStatusOf(project: Project, { kind, id }: Subject, status: Status): Project {
  switch (kind) {
    case 'item':
      return setItem(project, id, { status });
    case 'run':
      return setRun(project, id, { status });
    case 'feed':
      return setFeed(project, id, { status });
    case 'link':
      return setDataLink(project, id, { status });
    default:
      return project;
  }
}
