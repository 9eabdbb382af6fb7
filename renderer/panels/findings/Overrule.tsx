import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
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
  const [isOpen, setOpen] = useState(false);
  if (isOpen) return <ReasonForm finding={finding} onClose={() => setOpen(false)} />;
  return (
    <Button className="button link small" aria-label={`Overrule… ${finding.mark}`} onPress={() => setOpen(true)}>
      Overrule…
    </Button>
  );
}

function ReasonForm({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const store = useAppStore();
  const [reason, setReason] = useState('');
  const submit = (): void => {
    const { edit, project } = store.getState();
    const done = edit(`${finding.mark} overruled`, (before) =>
      overrideFinding(before, finding.key, reason.trim(), project.preparedBy),
    );
    if (done) onClose();
  };
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <TextField value={reason} onChange={setReason} onKeyDown={({ key }) => key === 'Escape' && onClose()} autoFocus>
        <Label>Reason, kept and printed on the install sheet</Label>
        <Input />
      </TextField>
      <span className="row">
        <Button type="submit" className="button button--primary" isDisabled={reason.trim() === ''}>
          Overrule {finding.mark}
        </Button>
        <Button className="button" onPress={onClose}>
          Cancel
        </Button>
      </span>
    </form>
  );
}
