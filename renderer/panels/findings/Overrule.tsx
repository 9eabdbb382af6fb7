import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Finding } from '../../../core/audit/types.ts';
import { clearFindingOverride, overrideFinding } from '../../../core/edit/findings.ts';
import { useAppStore } from '../../store/context.ts';

/** The way to overrule a remark with a reason, or the reason it was overruled for and the way back. */
export function Overrule({ finding }: { finding: Finding }) {
  return finding.overruled ? (
    <Overruled finding={finding} reason={finding.overruled.reason} by={finding.overruled.by} />
  ) : (
    <OverruleForm finding={finding} />
  );
}

function Overruled({ finding, reason, by }: { finding: Finding; reason: string; by: string }) {
  const store = useAppStore();
  return (
    <p className="note row-between">
      <span>
        Overruled: {reason}
        {by ? ` (${by})` : ''}
      </span>
      <Button
        className="button button--quiet"
        aria-label={`Restore ${finding.mark}`}
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
      <Button className="button link small" aria-label={`Overrule… ${finding.mark}`} onPress={() => setReason('')}>
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
