import { useId, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import { formatNumber, shownQuantity } from '../../core/units/format.ts';
import { parseNumber, storedValue } from '../../core/units/parse.ts';
import type { UnitPreferences } from '../../core/units/preferences.ts';
import type { Unit } from '../../core/units/quantity.ts';
import { useApp } from '../store/context.ts';

export interface QuantityFieldProps {
  readonly label: string;
  /** Stored value (m, km, dB …); null shows an empty field. */
  readonly value: number | null;
  readonly unit: Unit;
  readonly digits?: number;
  /** Allowed range in stored units. */
  readonly min?: number;
  readonly max?: number;
  /** Whether the field may be left empty; then `onCommit` gets null. */
  readonly isOptional?: boolean;
  readonly hint?: string;
  /** Called on Enter or on leaving the field, with the stored value, only when it is valid and has changed. */
  readonly onCommit: (value: number | null) => void;
}

/**
 * A number with its unit, in the reader's units and decimal mark. What was typed stays until it is valid; a message
 * under the field says the allowed range.
 */
export function QuantityField(props: QuantityFieldProps) {
  const { label, value, unit, hint } = props;
  const preferences = useApp((state) => state.preferences);
  const [draft, setDraft] = useState<string | null>(null);
  const hintId = useId();
  const { symbol } = shownQuantity({ value: 0, unit }, preferences);
  const text = draft ?? shownText(value, props, preferences);
  const problem = draft === null ? null : problemOf(draft, props, preferences);

  const commit = (): void => {
    if (draft === null || problem !== null) return;
    const stored = storedOf(draft, unit, preferences);
    setDraft(null);
    if (draft.trim() !== shownText(value, props, preferences)) props.onCommit(stored);
  };

  return (
    <TextField
      className="react-aria-TextField field"
      value={text}
      isInvalid={problem !== null}
      onChange={setDraft}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape' && draft !== null) setDraft(null);
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

function shownText(value: number | null, { unit, digits }: QuantityFieldProps, preferences: UnitPreferences): string {
  if (value === null) return '';
  const shown = shownQuantity(digits === undefined ? { value, unit } : { value, unit, digits }, preferences);
  return formatNumber(shown.value, shown.digits, preferences);
}

function storedOf(text: string, unit: Unit, preferences: UnitPreferences): number | null {
  const typed = parseNumber(text);
  return typed === null ? null : storedValue(typed, unit, preferences);
}

/** Why what was typed cannot be taken, or null. */
function problemOf(text: string, props: QuantityFieldProps, preferences: UnitPreferences): string | null {
  const { unit, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, isOptional } = props;
  if (text.trim() === '' && isOptional) return null;
  const stored = storedOf(text, unit, preferences);
  // A hair of slack, so that a limit shown rounded in feet can be typed as shown.
  const slack = 1e-3 * Math.max(1, Math.abs(stored ?? 0));
  if (stored !== null && stored >= min - slack && stored <= max + slack) return null;
  const show = (limit: number): string => shownText(limit, props, preferences);
  if (Number.isFinite(min) && Number.isFinite(max)) return `Type a number from ${show(min)} to ${show(max)}.`;
  if (Number.isFinite(min)) return `Type a number of at least ${show(min)}.`;
  return 'Type a number.';
}
