import { Button } from 'react-aria-components';
import type { Severity } from '../../core/audit/types.ts';
import { formatQuantity } from '../../core/units/format.ts';
import { selectionSentence } from '../outline/sentences.ts';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';

/** The line along the bottom: what just happened, what is selected, where the pointer is, and the loudest findings. */
export function StatusLine() {
  const message = useApp((state) => state.message);
  return (
    <footer className="status-line">
      <p className="status-message" data-tone={message?.tone ?? 'plain'} aria-live="polite" role="status">
        {message?.text}
      </p>
      <SelectionSummary />
      <PointerPosition />
      <FindingCounts />
    </footer>
  );
}

function SelectionSummary() {
  const project = useApp(shownProject);
  const selection = useApp((state) => state.selection);
  const preferences = useApp((state) => state.preferences);
  const assessment = useAssessment();
  return (
    <span className="status-selection soft">{selectionSentence({ project, assessment, preferences }, selection)}</span>
  );
}

function PointerPosition() {
  const pointer = useApp((state) => state.pointer);
  const preferences = useApp((state) => state.preferences);
  const shown = (value: number): string => formatQuantity({ value, unit: 'm' }, preferences);
  return (
    <span className="status-pointer soft mono-num" aria-hidden="true">
      {pointer ? `x ${shown(pointer.xM)}  z ${shown(pointer.zM)}` : ''}
    </span>
  );
}

const SEVERITIES: readonly { readonly severity: Severity; readonly word: string }[] = [
  { severity: 'A', word: 'safety' },
  { severity: 'B', word: 'soon' },
  { severity: 'C', word: 'note' },
];

function FindingCounts() {
  const findings = useAssessment().findings.filter(({ overruled }) => overruled === null);
  const showPanel = useApp((state) => state.showPanel);
  const counts = SEVERITIES.map((entry) => ({
    ...entry,
    count: findings.filter(({ severity }) => severity === entry.severity).length,
  }));
  return (
    <Button className="button button--quiet status-findings" onPress={() => showPanel('findings')}>
      <span className="sr-only">Open findings:</span>
      {counts.map(({ severity, word, count }) => (
        <span key={severity} className={`badge badge--${severity.toLowerCase()}`} title={word}>
          {severity} {count}
        </span>
      ))}
    </Button>
  );
}
