import { useState } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Authority, Finding, Severity } from '../../core/audit/types.ts';
import { clearFindingOverride, overrideFinding } from '../../core/edit/findings.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { useFormat } from '../ui/text.ts';
import './findings.css';

const SEVERITIES: readonly { readonly id: Severity; readonly name: string }[] = [
  { id: 'A', name: 'Safety: before use' },
  { id: 'B', name: 'Soon' },
  { id: 'C', name: 'Note' },
];

const STRENGTH_WORDS: Readonly<Record<Authority['strength'], string>> = {
  law: 'law for the vessels it names',
  guide: 'authority’s guidance',
  race: 'race safety rule',
  maker: 'one maker’s figure',
  practice: 'common practice',
  computed: 'computed',
};

/** Every remark, each standing alone, by severity; any can be overruled with a reason that is kept and printed. */
export function FindingsPanel() {
  const { findings } = useAssessment();
  const [shown, setShown] = useState<ReadonlySet<Severity>>(new Set(SEVERITIES.map(({ id }) => id)));
  if (findings.length === 0) {
    return (
      <div className="panel">
        <p className="empty">
          No remarks. Place sets and antennas and draw their cables and supplies; whatever the rules object to appears
          here.
        </p>
      </div>
    );
  }
  return (
    <div className="panel findings">
      <ToggleButtonGroup
        aria-label="Severities shown"
        className="row"
        selectionMode="multiple"
        disallowEmptySelection
        selectedKeys={shown}
        onSelectionChange={(keys) => setShown(new Set([...keys].map((key) => key as Severity)))}
      >
        {SEVERITIES.map(({ id, name }) => (
          <ToggleButton key={id} id={id}>
            <span className={`badge badge--${id.toLowerCase()}`}>{id}</span> {openOf(findings, id).length}
            <span className="sr-only">{name}</span>
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      {SEVERITIES.filter(({ id }) => shown.has(id)).map(({ id, name }) => (
        <SeveritySection key={id} name={`${id} · ${name}`} findings={findings.filter((each) => each.severity === id)} />
      ))}
      <p className="small soft">
        Remarks help a survey; they do not replace one. Local codes and a licensed or certificated installer govern.
      </p>
    </div>
  );
}

const openOf = (findings: readonly Finding[], severity: Severity): readonly Finding[] =>
  findings.filter((finding) => finding.severity === severity && finding.overruled === null);

function SeveritySection({ name, findings }: { name: string; findings: readonly Finding[] }) {
  return (
    <section className="panel-section" aria-label={name}>
      <h3 className="heading">{name}</h3>
      {findings.length === 0 ? <p className="small soft">None.</p> : null}
      {findings.map((finding) => (
        <FindingCard key={finding.key} finding={finding} />
      ))}
    </section>
  );
}

function FindingCard({ finding }: { finding: Finding }) {
  const store = useAppStore();
  const { rich } = useFormat();
  const isChosen = useApp(({ selection }) =>
    finding.subjects.some(({ kind, id }) => selection.some((subject) => subject.kind === kind && subject.id === id)),
  );
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
          <Button className="button button--quiet" onPress={() => store.getState().select(finding.subjects)}>
            Show
          </Button>
        ) : null}
      </header>
      <dl className="facts">
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
      {overruled ? <Overruled finding={finding} /> : <OverruleForm finding={finding} />}
    </article>
  );
}

function Overruled({ finding }: { finding: Finding }) {
  const store = useAppStore();
  return (
    <p className="note row-between">
      <span>
        Overruled: {finding.overruled?.reason}
        {finding.overruled?.by ? ` (${finding.overruled.by})` : ''}
      </span>
      <Button
        className="button button--quiet"
        onPress={() =>
          store.getState().edit(`${finding.mark} restored`, (project) => clearFindingOverride(project, finding.key))
        }
      >
        Restore
      </Button>
    </p>
  );
}

function OverruleForm({ finding }: { finding: Finding }) {
  const store = useAppStore();
  const [reason, setReason] = useState<string | null>(null);
  if (reason === null) {
    return (
      <Button className="button link small" onPress={() => setReason('')}>
        Overrule…
      </Button>
    );
  }
  const submit = (): void => {
    const done = store
      .getState()
      .edit(`${finding.mark} overruled`, (project) =>
        overrideFinding(project, finding.key, reason.trim(), project.preparedBy),
      );
    if (done) setReason(null);
  };
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <label className="field">
        <span className="label">Reason, kept and printed on the install sheet</span>
        <input
          className="input"
          value={reason}
          // biome-ignore lint/a11y/noAutofocus: the field appears because its button was just pressed
          autoFocus
          onChange={(event) => setReason(event.target.value)}
          onKeyDown={(event) => event.key === 'Escape' && setReason(null)}
        />
      </label>
      <span className="row">
        <Button type="submit" className="button button--primary" isDisabled={reason.trim() === ''}>
          Overrule {finding.mark}
        </Button>
        <Button className="button" onPress={() => setReason(null)}>
          Cancel
        </Button>
      </span>
    </form>
  );
}
