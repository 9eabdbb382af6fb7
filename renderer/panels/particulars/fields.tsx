import { type ReactNode, useState } from 'react';
import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import type { Subject } from '../../../core/model/project.ts';
import type { Unit } from '../../../core/units/quantity.ts';
import { Choice } from '../../app/Choice.tsx';
import { Icon } from '../../app/icons.tsx';
import { useApp, useAppStore } from '../../store/context.ts';
import type { AppActions } from '../../store/store.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { optionsOf } from './words.ts';

/** The store's edit, for handlers. */
export const useEdit = (): AppActions['edit'] => useApp((state) => state.edit);

/** One number of a group of fields: its key, what it is called, its unit and its allowed span in stored units. */
export interface NumberSpec<K extends string> {
  readonly key: K;
  readonly label: string;
  readonly unit: Unit;
  readonly digits: number;
  readonly min: number;
  readonly max: number;
}

interface Spanned {
  readonly minValue: number | null;
  readonly maxValue: number | null;
}

/** A number field described by the document's own schema, so that the two cannot disagree about what is allowed. */
export function numberSpec<K extends string>(
  key: K,
  label: string,
  schema: Spanned,
  unit: Unit = 'm',
  digits = 2,
): NumberSpec<K> {
  return { key, label, unit, digits, min: schema.minValue ?? -1e9, max: schema.maxValue ?? 1e9 };
}

/** A row of number fields; each commits by itself. */
export function NumberFields<K extends string>({
  specs,
  values,
  onCommit,
}: {
  specs: readonly NumberSpec<K>[];
  values: Readonly<Record<K, number>>;
  /** As for one field: an answer of `false` says the number was refused. */
  onCommit: (key: K, value: number, label: string) => unknown;
}) {
  return specs.map(({ key, ...spec }) => (
    <QuantityField
      key={key}
      {...spec}
      value={values[key]}
      onCommit={(value) => value !== null && onCommit(key, value, spec.label)}
    />
  ));
}

const NOT_KNOWN = '?';

/** A choice from a table of words. */
export function WordChoice<K extends string>({
  label,
  words,
  value,
  onChange,
}: {
  label: string;
  words: Readonly<Record<K, string>>;
  value: K | null;
  onChange: (key: K) => void;
}) {
  const options = optionsOf(words);
  return (
    <Choice
      label={label}
      options={options}
      value={value}
      onChange={(id) => {
        const chosen = options.find((option) => option.id === id);
        if (chosen && chosen.id !== value) onChange(chosen.id);
      }}
    />
  );
}

/** As `WordChoice`, with one more entry for what is not there or not known (`undefined`). */
export function OpenChoice({
  label,
  words,
  value,
  open = 'Not known',
  onChange,
}: {
  label: string;
  words: Readonly<Record<string, string>>;
  value: string | undefined;
  open?: string;
  onChange: (key: string | undefined) => void;
}) {
  const options = [{ id: NOT_KNOWN, name: open }, ...optionsOf(words)];
  return (
    <Choice
      label={label}
      options={options}
      value={value ?? NOT_KNOWN}
      onChange={(id) => {
        const chosen = id === NOT_KNOWN ? undefined : id;
        if (chosen !== value) onChange(chosen);
      }}
    />
  );
}

/** A yes or no that is known. */
export function Tick({
  label,
  isTicked,
  onChange,
}: {
  label: string;
  isTicked: boolean;
  onChange: (isTicked: boolean) => void;
}) {
  return (
    <label className="tick">
      <input type="checkbox" checked={isTicked} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}

/** A heading that folds what is under it away. The inside is made only while it is open: lists can be long. */
export function Fold({
  title,
  note,
  children,
  isOpenAtFirst = false,
}: {
  title: string;
  note?: string;
  children: () => ReactNode;
  isOpenAtFirst?: boolean;
}) {
  const [isExpanded, setIsExpanded] = useState(isOpenAtFirst);
  return (
    <Disclosure className="fold" isExpanded={isExpanded} onExpandedChange={setIsExpanded}>
      <Heading className="heading" level={4}>
        <Button slot="trigger" className="fold-trigger">
          <Icon name="chevronRight" size={14} />
          <span className="fold-title">{title}</span>
          {note === undefined ? null : <span className="soft small">{note}</span>}
        </Button>
      </Heading>
      <DisclosurePanel>
        <div className="fold-inside">{isExpanded ? children() : null}</div>
      </DisclosurePanel>
    </Disclosure>
  );
}

/** A link in a sentence that selects another thing. */
export function Jump({ subject, children }: { subject: Subject; children: ReactNode }) {
  const store = useAppStore();
  return (
    <Button className="button link small" onPress={() => store.getState().select([subject])}>
      {children}
    </Button>
  );
}
