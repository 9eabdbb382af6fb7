import { Button } from 'react-aria-components';
import type { Authority, Finding } from '../../../core/audit/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { subjectLabel } from '../../../core/report/words.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { Overrule } from './Overrule.tsx';
import { isAbout } from './shown.ts';

const STRENGTH_WORDS: Readonly<Record<Authority['strength'], string>> = {
  law: 'law for the vessels it names',
  guide: 'authority’s guidance',
  race: 'race safety rule',
  maker: 'one maker’s figure',
  practice: 'common practice',
  computed: 'computed',
};

/** One remark, standing alone. */
export function FindingCard({ project, finding }: { project: Project; finding: Finding }) {
  const store = useAppStore();
  const { rich } = useFormat();
  const isChosen = useApp(({ selection }) => isAbout(finding, selection));
  const { mark, severity, title, authority, overruled } = finding;
  return (
    <article
      className={`finding${isChosen ? ' is-chosen' : ''}${overruled ? ' is-overruled' : ''}`}
      aria-label={`${mark} ${title}`}
    >
      <header className="row-between">
        <h4 className="heading">
          <span className={`badge badge--${severity.toLowerCase()}`}>{mark}</span> {title}
        </h4>
        {finding.subjects.length > 0 ? (
          <Button
            className="button button--quiet"
            aria-label={`Show ${mark} on the drawing`}
            onPress={() => store.getState().select(finding.subjects)}
          >
            Show
          </Button>
        ) : null}
      </header>
      <dl className="facts">
        <Where project={project} finding={finding} />
        <dt>Found</dt>
        <dd>{rich(finding.measured)}</dd>
        <dt>Limit</dt>
        <dd>{rich(finding.limit)}</dd>
        <dt>Whose rule</dt>
        <dd>
          {authority.name} <span className="soft">({STRENGTH_WORDS[authority.strength]})</span>
        </dd>
        <dt>What to do</dt>
        <dd>{rich(finding.action)}</dd>
      </dl>
      <Overrule finding={finding} />
    </article>
  );
}

/** Everything the remark is about, each a way to it. */
function Where({ project, finding }: { project: Project; finding: Finding }) {
  const store = useAppStore();
  if (finding.subjects.length === 0) return null;
  return (
    <>
      <dt>Where</dt>
      <dd className="row finding-where">
        {finding.subjects.map((subject) => (
          <Button
            key={`${subject.kind}:${subject.id}`}
            className="button link"
            onPress={() => store.getState().select([subject])}
          >
            {subjectLabel(project, subject)}
          </Button>
        ))}
      </dd>
    </>
  );
}
