import { setDataLink } from '../../../core/edit/feeds.ts';
import type { DataLink, Project } from '../../../core/model/project.ts';
import { useApp } from '../../store/context.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { Tick, useEdit, WordChoice } from './fields.tsx';
import { LineHeading, LineNotes } from './Line.tsx';
import { FindingsAbout, HangsOn } from './Shared.tsx';
import { CARRIES, LINK_STANDARDS, optionsOf, STATUSES } from './words.ts';

/** Everything about one data link. */
export function LinkView({ project, link }: { project: Project; link: DataLink }) {
  const edit = useEdit();
  const subject = { kind: 'link', id: link.id } as const;
  const change = (what: string, values: Parameters<typeof setDataLink>[2]): boolean =>
    edit(`${link.number}: ${what}`, (before) => setDataLink(before, link.id, values));
  return (
    <>
      <LineHeading project={project} line={link} what="data link" />
      <section className="panel-section" aria-label="Link">
        <div className="particulars-fields particulars-fields--three">
          <TextRow
            label="Number"
            value={link.number}
            isRequired
            onCommit={(number) => change(`is now ${number}`, { number })}
          />
          <WordChoice
            label="Standard"
            words={LINK_STANDARDS}
            value={link.standard}
            onChange={(standard) => change('standard changed', { standard })}
          />
          <WordChoice
            label="Status"
            words={STATUSES}
            value={link.status}
            onChange={(status) => change('status changed', { status })}
          />
        </div>
        <Carries link={link} onChange={(carries) => change('what it carries changed', { carries })} />
      </section>
      <HangsOn subject={subject} />
      <FindingsAbout subject={subject} />
      <LineNotes subject={subject} line={link} onCommit={(notes) => change('notes changed', { notes })} />
    </>
  );
}

/** At least one of them; the last tick stays, with the reason said. */
function Carries({ link, onChange }: { link: DataLink; onChange: (carries: DataLink['carries']) => void }) {
  const say = useApp((state) => state.say);
  const toggle = (id: DataLink['carries'][number], isTicked: boolean): void => {
    const carries = isTicked ? [...link.carries, id] : link.carries.filter((each) => each !== id);
    if (carries.length > 0) onChange(carries);
    else say({ tone: 'refusal', text: `${link.number} has to carry something: delete it if it carries nothing.` });
  };
  return (
    <fieldset className="particulars-group">
      <legend className="label">What it carries</legend>
      <div className="row particulars-ticks">
        {optionsOf(CARRIES).map(({ id, name }) => (
          <Tick
            key={id}
            label={name}
            isTicked={link.carries.includes(id)}
            onChange={(isTicked) => toggle(id, isTicked)}
          />
        ))}
      </div>
    </fieldset>
  );
}
