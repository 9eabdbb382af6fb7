import type { DataLink, Feed, Project, Run, Subject } from '../../../core/model/project.ts';
import { endpointLabel } from '../../../core/report/words.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { Jump } from './fields.tsx';
import { RemoveButton } from './Shared.tsx';

/** Number of a run, feed or link, what it is, and the two things it joins. */
export function LineHeading({ project, line, what }: { project: Project; line: Run | Feed | DataLink; what: string }) {
  return (
    <header className="stack">
      <h2 className="title">
        {line.number} <span className="particulars-part">{what}</span>
      </h2>
      <p className="small">
        From <Jump subject={{ kind: 'item', id: line.from.itemId }}>{endpointLabel(project, line.from)}</Jump> to{' '}
        <Jump subject={{ kind: 'item', id: line.to.itemId }}>{endpointLabel(project, line.to)}</Jump>
      </p>
    </header>
  );
}

/** What is noted about a line, and the way to take it off. */
export function LineNotes({
  subject,
  line,
  onCommit,
}: {
  subject: Subject;
  line: Run | Feed | DataLink;
  onCommit: (notes: string) => void;
}) {
  return (
    <section className="panel-section" aria-label="Notes">
      <TextRow label="Notes" value={line.notes} isLong onCommit={onCommit} />
      <div className="row">
        <RemoveButton subject={subject} name={line.number} />
      </div>
    </section>
  );
}
