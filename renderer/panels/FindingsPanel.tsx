import { useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Finding, Severity } from '../../core/audit/types.ts';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { FindingCard } from './findings/FindingCard.tsx';
import { emptyWords, shownFindings, standingCount } from './findings/shown.ts';
import './findings.css';

const SEVERITIES: readonly { readonly id: Severity; readonly name: string }[] = [
  { id: 'A', name: 'Safety: before use' },
  { id: 'B', name: 'Soon' },
  { id: 'C', name: 'Note' },
];

/** Every remark, each standing alone, by severity; any can be overruled with a reason that is kept and printed. */
export function FindingsPanel() {
  const { findings } = useAssessment();
  const [shown, setShown] = useState<ReadonlySet<Severity>>(new Set(SEVERITIES.map(({ id }) => id)));
  const [isOnlySelected, setOnlySelected] = useState(false);
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
      <div className="row">
        <SeverityFilter findings={findings} shown={shown} onChange={setShown} />
        <ToggleButton isSelected={isOnlySelected} onChange={setOnlySelected}>
          Only what is selected
        </ToggleButton>
      </div>
      {SEVERITIES.filter(({ id }) => shown.has(id)).map(({ id, name }) => (
        <SeveritySection
          key={id}
          severity={id}
          name={`${id} · ${name}`}
          findings={findings}
          isOnlySelected={isOnlySelected}
        />
      ))}
      <p className="small soft">
        Remarks help a survey; they do not replace one. Local codes and a licensed or certificated installer govern.
      </p>
    </div>
  );
}

function SeverityFilter({
  findings,
  shown,
  onChange,
}: {
  findings: readonly Finding[];
  shown: ReadonlySet<Severity>;
  onChange: (shown: ReadonlySet<Severity>) => void;
}) {
  return (
    <ToggleButtonGroup
      aria-label="Severities shown"
      className="row"
      selectionMode="multiple"
      disallowEmptySelection
      selectedKeys={shown}
      onSelectionChange={(keys) => onChange(new Set(SEVERITIES.map(({ id }) => id).filter((id) => keys.has(id))))}
    >
      {SEVERITIES.map(({ id, name }) => (
        <ToggleButton key={id} id={id}>
          <span className={`badge badge--${id.toLowerCase()}`}>{id}</span> {standingCount(findings, id)}
          <span className="sr-only">{name}</span>
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

function SeveritySection({
  severity,
  name,
  findings,
  isOnlySelected,
}: {
  severity: Severity;
  name: string;
  findings: readonly Finding[];
  isOnlySelected: boolean;
}) {
  const project = useApp(shownProject);
  const selection = useApp((state) => state.selection);
  const listed = shownFindings(findings, severity, isOnlySelected ? selection : null);
  return (
    <section className="panel-section" aria-label={name}>
      <h3 className="heading">{name}</h3>
      {listed.length === 0 ? <p className="small soft">{emptyWords(findings, severity)}</p> : null}
      {listed.map((finding) => (
        <FindingCard key={finding.key} project={project} finding={finding} />
      ))}
    </section>
  );
}
