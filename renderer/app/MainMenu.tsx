import type { ReactNode } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover, Separator, SubmenuTrigger, Text } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { whenSaid } from '../ui/when.ts';
import { ActionItem } from './ActionItem.tsx';
import { actionById } from './actions.ts';
import { DEMO_ACTIONS } from './actionsFile.ts';
import { DEMOS } from './demos.ts';
import { Icon } from './icons.tsx';
import { MENUS, type MenuEntry } from './menus.ts';
import { openRecent } from './openActions.ts';
import { PreferenceMenus } from './PreferenceMenus.tsx';
import { clearRecents, refreshRecents } from './recents.ts';

/** The page's menus: every action there is, in its place. */
export function MainMenu() {
  const store = useAppStore();
  const host = useHost();
  return MENUS.map(({ name, entries }) => (
    <MenuButton
      key={name}
      name={name}
      onOpen={() => {
        if (name === 'File') void refreshRecents(store, host);
      }}
    >
      <Menu aria-label={name}>
        <Entries entries={entries} />
      </Menu>
    </MenuButton>
  ));
}

/** A button that opens a menu. */
export function MenuButton({ name, children, onOpen }: { name: string; children: ReactNode; onOpen?: () => void }) {
  return (
    <MenuTrigger
      onOpenChange={(isOpen) => {
        if (isOpen) onOpen?.();
      }}
    >
      <Button className="button button--quiet">
        {name}
        <Icon name="chevron" size={12} />
      </Button>
      <Popover placement="bottom start">{children}</Popover>
    </MenuTrigger>
  );
}

function Entries({ entries }: { entries: readonly MenuEntry[] }) {
  return entries.map((entry) => <Entry key={keyOf(entry)} entry={entry} />);
}

const keyOf = (entry: MenuEntry): string => {
  if (typeof entry === 'string') return entry;
  return 'name' in entry ? entry.name : 'id' in entry ? entry.id : entry.kind;
};

function Entry({ entry }: { entry: MenuEntry }) {
  const host = useHost();
  if (typeof entry === 'string') {
    const action = actionById(entry);
    if (action.isDesktopOnly && host.kind !== 'electron') return null;
    const demo = DEMOS[DEMO_ACTIONS.findIndex(({ id }) => id === entry)];
    return demo ? <ActionItem action={action} name={demo.name} /> : <ActionItem action={action} />;
  }
  switch (entry.kind) {
    case 'line':
      return <Separator />;
    case 'menu':
      return (
        <SubMenu name={entry.name}>
          <Entries entries={entry.entries} />
        </SubMenu>
      );
    case 'recents':
      return <Recents />;
    case 'preferences':
      return <PreferenceMenus />;
  }
}

/** A menu within a menu; `now` says what is chosen in it. */
export function SubMenu({ name, now, children }: { name: string; now?: string; children: ReactNode }) {
  return (
    <SubmenuTrigger>
      <MenuItem textValue={name}>
        <Text slot="label">{name}</Text>
        <span className="submenu-now">
          {now} <Icon name="chevronRight" size={12} />
        </span>
      </MenuItem>
      <Popover>
        <Menu aria-label={name}>{children}</Menu>
      </Popover>
    </SubmenuTrigger>
  );
}

/** Files used before, where the host keeps a list of them and there are any. */
function Recents() {
  const store = useAppStore();
  const host = useHost();
  const recents = useApp((state) => state.recents);
  if (recents.length === 0) return null;
  return (
    <SubMenu name="Open recent">
      {recents.map(({ id, name, folder, lastUsed, missing }) => (
        <MenuItem key={id} id={id} textValue={name} onAction={() => void openRecent(store, host, id)}>
          <Text slot="label">{name}</Text>
          <Text slot="description">
            {missing ? 'Not there now' : whenSaid(lastUsed)}, in {folder}
          </Text>
        </MenuItem>
      ))}
      <Separator />
      <MenuItem id="clear" onAction={() => void clearRecents(store, host)}>
        Clear this list
      </MenuItem>
    </SubMenu>
  );
}
