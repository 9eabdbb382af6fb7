import type { ReactNode } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover, Separator, SubmenuTrigger } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { isUnsaved } from '../store/store.ts';
import { ActionButton, ActionItem } from './ActionItem.tsx';
import { actionById, actionsById } from './actions.ts';
import { DEMO_ACTIONS } from './actionsFile.ts';
import { DEMOS } from './fileActions.ts';
import { Icon } from './icons.tsx';
import { LayoutSwitch } from './LayoutSwitch.tsx';
import { ViewMenu } from './ViewMenu.tsx';

/** The bar along the top: what document this is, and the menus. */
export function TopBar() {
  return (
    <header className="top-bar">
      <nav className="top-bar-menus" aria-label="Main menu">
        <FileMenu />
        <EditMenu />
        <ViewMenu />
      </nav>
      <div className="top-bar-tools">
        <ActionButton action={actionById('undo')} icon="undo" />
        <ActionButton action={actionById('redo')} icon="redo" />
      </div>
      <DocumentTitle />
      <LayoutSwitch />
      <div className="top-bar-tools">
        <PlainAction id="palette" name="Commands" />
        <PlainAction id="settings" name="Settings" />
        <PlainAction id="help" name="Help" />
      </div>
    </header>
  );
}

function DocumentTitle() {
  const title = useApp((state) => state.project.title);
  const fileName = useApp((state) => state.file?.name ?? null);
  const unsaved = useApp(isUnsaved);
  return (
    <div className="top-bar-title">
      <h1 className="title">{title}</h1>
      <span className="soft small">
        {fileName}
        {unsaved ? <span className="unsaved">{fileName ? ', not saved' : 'Not saved'}</span> : null}
      </span>
    </div>
  );
}

function PlainAction({ id, name }: { id: string; name: string }) {
  const store = useAppStore();
  const host = useHost();
  return (
    <Button className="button button--quiet" onPress={() => void actionById(id).perform(store, host)}>
      {name}
    </Button>
  );
}

/** A button that opens a menu. */
export function MenuButton({ name, children }: { name: string; children: ReactNode }) {
  return (
    <MenuTrigger>
      <Button className="button button--quiet">
        {name}
        <Icon name="chevron" size={12} />
      </Button>
      <Popover placement="bottom start">{children}</Popover>
    </MenuTrigger>
  );
}

function Entries({ ids }: { ids: readonly string[] }) {
  return actionsById(ids).map((action) => <ActionItem key={action.id} action={action} />);
}

function FileMenu() {
  return (
    <MenuButton name="File">
      <Menu aria-label="File">
        <Entries ids={['new-boat', 'open']} />
        <SubmenuTrigger>
          <MenuItem textValue="Open demo">
            Open demo <Icon name="chevronRight" size={12} />
          </MenuItem>
          <Popover>
            <Menu aria-label="Open demo">
              {DEMO_ACTIONS.map((action, i) => (
                <ActionItem key={action.id} action={action} name={DEMOS[i]?.name ?? action.name} />
              ))}
            </Menu>
          </Popover>
        </SubmenuTrigger>
        <Separator />
        <Entries ids={['save', 'save-as']} />
        <Separator />
        <SubmenuTrigger>
          <MenuItem textValue="Export">
            Export <Icon name="chevronRight" size={12} />
          </MenuItem>
          <Popover>
            <Menu aria-label="Export">
              <Entries ids={['export-pdf', 'export-schedule', 'export-losses', 'export-svg']} />
            </Menu>
          </Popover>
        </SubmenuTrigger>
      </Menu>
    </MenuButton>
  );
}

function EditMenu() {
  return (
    <MenuButton name="Edit">
      <Menu aria-label="Edit">
        <Entries ids={['undo', 'redo']} />
        <Separator />
        <Entries ids={['copy', 'paste', 'duplicate', 'delete', 'select-all']} />
        <Separator />
        <Entries ids={['add-part', 'connect', 'insert', 'route']} />
      </Menu>
    </MenuButton>
  );
}
