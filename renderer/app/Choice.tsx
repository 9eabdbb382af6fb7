import { Button, FieldError, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { Icon } from './icons.tsx';

export interface Option {
  readonly id: string;
  readonly name: string;
  /** Said under the name: why it does not fit, or what to mind. */
  readonly note?: string;
  /** Paler; it can still be reached, so that its reason can be read and heard, and the dialog then says it too. */
  readonly isRefused?: boolean;
}

/** A choice from a list, with a note under each entry. */
export function Choice({
  label,
  options,
  value,
  onChange,
  placeholder = 'Choose',
  autoFocus = false,
}: {
  label: string;
  options: readonly Option[];
  value: string | null;
  onChange: (id: string) => void;
  placeholder?: string;
  autoFocus?: boolean;
}) {
  return (
    <Select
      selectedKey={value}
      onSelectionChange={(key) => key !== null && onChange(String(key))}
      placeholder={placeholder}
      autoFocus={autoFocus}
    >
      <Label>{label}</Label>
      <Button>
        <SelectValue />
        <Icon name="chevron" size={12} />
      </Button>
      <FieldError />
      <Popover>
        <ListBox items={options}>
          {(option) => (
            <ListBoxItem
              id={option.id}
              textValue={option.name}
              className={`react-aria-ListBoxItem${option.isRefused ? ' is-refused' : ''}`}
            >
              <span>{option.name}</span>
              {option.note ? <span className="option-note">{option.note}</span> : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  );
}
