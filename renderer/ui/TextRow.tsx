import { useState } from 'react';
import { FieldError, Input, Label, TextArea, TextField } from 'react-aria-components';
import { useAppStore } from '../store/context.ts';
import { refusalText } from './refusal.ts';

/**
 * A text that commits on Enter or on leaving the field; an empty one is refused where something is needed. When
 * `onCommit` answers `false` the edit was refused: what was typed stays, with the reason under it.
 */
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
  onCommit: (value: string) => unknown;
}) {
  const store = useAppStore();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const isEmpty = draft !== null && isRequired && draft.trim() === '';
  const problem = isEmpty ? 'Type at least one letter.' : refusal;
  const forget = (): void => {
    setDraft(null);
    setRefusal(null);
  };
  const commit = (): void => {
    if (draft === null || problem !== null) return;
    if (draft.trim() !== value && onCommit(draft.trim()) === false) setRefusal(refusalText(store.getState()));
    else setDraft(null);
  };
  return (
    <TextField
      className="react-aria-TextField field"
      value={draft ?? value}
      isInvalid={problem !== null}
      onChange={(text) => {
        setDraft(text);
        setRefusal(null);
      }}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && !isLong) commit();
        if (event.key === 'Escape' && draft !== null) forget();
      }}
    >
      <Label>{label}</Label>
      {isLong ? <TextArea rows={3} /> : <Input />}
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}
