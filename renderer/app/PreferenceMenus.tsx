import { MenuItem, MenuSection } from 'react-aria-components';
import { useApp } from '../store/context.ts';
import type { Preferences } from '../store/preferences.ts';
import { SubMenu } from './MainMenu.tsx';

const CHOICES: readonly {
  readonly key: Exclude<keyof Preferences, 'tourSeen'>;
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly name: string }[];
}[] = [
  {
    key: 'length',
    name: 'Lengths on the boat',
    options: [
      { value: 'm', name: 'Metres' },
      { value: 'ft', name: 'Feet' },
    ],
  },
  {
    key: 'distance',
    name: 'Ranges',
    options: [
      { value: 'nm', name: 'Nautical miles' },
      { value: 'km', name: 'Kilometres' },
    ],
  },
  {
    key: 'wire',
    name: 'Conductors',
    options: [
      { value: 'mm2', name: 'mm²' },
      { value: 'awg', name: 'AWG' },
    ],
  },
  {
    key: 'decimal',
    name: 'Decimal mark',
    options: [
      { value: '.', name: 'Point, 3.5' },
      { value: ',', name: 'Comma, 3,5' },
    ],
  },
  {
    key: 'theme',
    name: 'Theme',
    options: [
      { value: 'system', name: 'As the system' },
      { value: 'light', name: 'Light' },
      { value: 'dark', name: 'Dark' },
    ],
  },
  {
    key: 'paper',
    name: 'Paper',
    options: [
      { value: 'A4', name: 'A4' },
      { value: 'Letter', name: 'Letter' },
    ],
  },
];

/** Units, theme and paper: one menu each, which says what is chosen. */
export function PreferenceMenus() {
  const preferences = useApp((state) => state.preferences);
  const setPreferences = useApp((state) => state.setPreferences);
  return CHOICES.map(({ key, name, options }) => (
    <SubMenu key={key} name={name} now={options.find(({ value }) => value === preferences[key])?.name ?? ''}>
      <MenuSection
        aria-label={name}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[preferences[key]]}
        onSelectionChange={(keys) => {
          const [value] = [...keys];
          if (value !== undefined) setPreferences({ [key]: value });
        }}
      >
        {options.map((option) => (
          <MenuItem key={option.value} id={option.value}>
            {option.name}
          </MenuItem>
        ))}
      </MenuSection>
    </SubMenu>
  ));
}
