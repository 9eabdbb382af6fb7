import { useId, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import { shownQuantity } from '../../core/units/format.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { refusalText } from './refusal.ts';
import { type QuantityRule, readTyped, shownText } from './typedQuantity.ts';

export interface QuantityFieldProps extends QuantityRule {
  readonly label: string;
  /** Stored value (m, km, dB …); null shows an empty field. */
  readonly value: number | null;
  readonly hint?: string;
  /** Whether every valid key stroke counts at once, as in a dialog that shows what would come of it. */
  readonly isLive?: boolean;
  /**
   * Called on Enter or on leaving the field, with the stored value (null for an optional field left empty), only when it
   * is valid and has changed. An answer of `false` says it was refused: what was typed stays, with the reason under it.
   */
  readonly onCommit: (value: number | null) => unknown;
}

/**
 * A number with its unit, in the reader's units and decimal mark. What was typed stays until it is valid; a message
 * under the field says the allowed range.
 */
export function QuantityField(props: QuantityFieldProps) {
  const { label, value, unit, hint } = props;
  const preferences = useApp((state) => state.preferences);
  const { symbol } = shownQuantity({ value: 0, unit }, preferences);
  const hintId = useId();
  const { text, problem, onType, onLeave, onGiveUp } = useDraft(props);
  return (
    <TextField
      className="react-aria-TextField field"
      value={text}
      isInvalid={problem !== null}
      onChange={onType}
      onBlur={onLeave}
      onKeyDown={(event) => {
        if (event.key === 'Enter') onLeave();
        // Escape gives up what was typed; with nothing to give up it belongs to the dialog around, as other keys do.
        if (event.key === 'Escape' && text !== shownText(value, props, preferences)) onGiveUp();
        else event.continuePropagation();
      }}
      {...(hint === undefined ? {} : { 'aria-describedby': hintId })}
    >
      <Label>{label}</Label>
      <span className="input-with-unit">
        <Input inputMode="decimal" />
        {symbol === '' ? null : <span className="unit">{symbol}</span>}
      </span>
      {hint === undefined ? null : (
        <span className="hint" id={hintId}>
          {hint}
        </span>
      )}
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}

/** What is being typed, and what becomes of it. */
function useDraft(props: QuantityFieldProps) {
  const store = useAppStore();
  const preferences = useApp((state) => state.preferences);
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const shown = shownText(props.value, props, preferences);
  const typed = draft === null ? null : readTyped(draft, props, preferences);

  const commit = (stored: number | null): boolean => {
    if (props.onCommit(stored) !== false) return true;
    setRefusal(refusalText(store.getState()));
    return false;
  };
  return {
    text: draft ?? shown,
    problem: typed?.isValid === false ? typed.problem : refusal,
    onType: (text: string): void => {
      setDraft(text);
      setRefusal(null);
      const read = readTyped(text, props, preferences);
      if (props.isLive && read.isValid) commit(read.stored);
    },
    onLeave: (): void => {
      if (draft === null || !typed?.isValid || refusal !== null) return;
      if (draft.trim() === shown || typed.stored === props.value || commit(typed.stored)) setDraft(null);
    },
    onGiveUp: (): void => {
      setDraft(null);
      setRefusal(null);
    },
  };
}
