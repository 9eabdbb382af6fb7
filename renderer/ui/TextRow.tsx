import { useState } from 'react';
import { FieldError, Input, Label, TextArea, TextField } from 'react-aria-components';
import { useAppStore } from '../store/context.ts';
import { refusalText } from './refusal.ts';

interface TextRowProps {
  readonly label: string;
  readonly value: string;
  readonly isRequired?: boolean;
  readonly isLong?: boolean;
  /** Called with the trimmed text when it has changed. An answer of `false` says it was refused. */
  readonly onCommit: (value: string) => unknown;
}

/**
 * A text that commits on Enter or on leaving the field; an empty one is not taken where something is needed. What was
 * refused stays, with the reason under it.
 */
export function TextRow(props: TextRowProps) {
  const { label, isLong = false } = props;
  const { text, problem, onType, onLeave, onGiveUp } = useDraft(props);
  return (
    <TextField
      className="react-aria-TextField field"
      value={text}
      isInvalid={problem !== null}
      onChange={onType}
      onBlur={onLeave}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && !isLong) onLeave();
        if (event.key === 'Escape' && text !== props.value) onGiveUp();
        else event.continuePropagation();
      }}
    >
      <Label>{label}</Label>
      {isLong ? <TextArea rows={3} /> : <Input />}
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}

/** What is being typed, and what becomes of it. */
function useDraft({ value, isRequired = false, onCommit }: TextRowProps) {
  const store = useAppStore();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const typed = draft?.trim() ?? null;
  const problem = isRequired && typed === '' ? 'Type at least one letter.' : refusal;
  const change = (text: string | null): void => {
    setDraft(text);
    setRefusal(null);
  };
  return {
    text: draft ?? value,
    problem,
    onType: change,
    onLeave: (): void => {
      if (typed === null || problem !== null) return;
      if (typed !== value && onCommit(typed) === false) setRefusal(refusalText(store.getState()));
      else change(null);
    },
    onGiveUp: (): void => change(null),
  };
}
