import { useId } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';

/** One of a few things, all of them in sight: a row of chips of which one is down. */
export function Chips<Id extends string | number>({
  label,
  options,
  value,
  onChange,
  isLabelHidden = false,
}: {
  label: string;
  options: readonly { readonly id: Id; readonly name: string }[];
  value: Id;
  onChange: (id: Id) => void;
  isLabelHidden?: boolean;
}) {
  const labelId = useId();
  return (
    <div className="chips-field">
      <span id={labelId} className={isLabelHidden ? 'sr-only' : 'label'}>
        {label}
      </span>
      <ToggleButtonGroup
        className="chips"
        aria-labelledby={labelId}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[value]}
        onSelectionChange={(keys) => {
          const chosen = options.find(({ id }) => keys.has(id));
          if (chosen) onChange(chosen.id);
        }}
      >
        {options.map(({ id, name }) => (
          <ToggleButton key={id} id={id}>
            {name}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
    </div>
  );
}
