import {
  Button,
  FieldError,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
  Text,
} from 'react-aria-components';
import { Icon } from './icons.tsx';

export interface Option {
  readonly id: string;
  readonly name: string;
  /** Said under the name: why it does not fit, or what to mind. */
  readonly note?: string;
  readonly isRefused?: boolean;
}

/** A choice from a list, with a note under each entry; refused entries are listed with their reason but not chosen. */
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
        <ListBox items={options} disabledKeys={options.filter(({ isRefused }) => isRefused).map(({ id }) => id)}>
          {(option) => (
            <ListBoxItem id={option.id} textValue={option.name}>
              <Text slot="label">{option.name}</Text>
              {option.note ? <Text slot="description">{option.note}</Text> : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  );
}
