import { useState } from 'react';
import { FieldError, Input, Label, TextArea, TextField } from 'react-aria-components';

/** A text that commits on Enter or on leaving the field; an empty one is refused where something is needed. */
export function TextRow({
  label,
  value,
  isRequired = false,
  isLong = false,
  onCommit,
}: {
  label: string;
  value: string;
  isRequired?: boolean;
  isLong?: boolean;
  onCommit: (value: string) => void;
}) {
  const [draft, setDraft] = useState<string | null>(null);
  const isInvalid = draft !== null && isRequired && draft.trim() === '';
  const commit = (): void => {
    if (draft === null || isInvalid) return;
    setDraft(null);
    if (draft.trim() !== value) onCommit(draft.trim());
  };
  return (
    <TextField
      className="react-aria-TextField field"
      value={draft ?? value}
      isInvalid={isInvalid}
      onChange={setDraft}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && !isLong) commit();
        if (event.key === 'Escape' && draft !== null) setDraft(null);
      }}
    >
      <Label>{label}</Label>
      {isLong ? <TextArea rows={3} /> : <Input />}
      <FieldError>{isInvalid ? 'Type at least one letter.' : null}</FieldError>
    </TextField>
  );
}
