import { Button } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { isUnsaved } from '../store/store.ts';
import { ActionButton } from './ActionItem.tsx';
import { actionById } from './actions.ts';
import { LayoutSwitch } from './LayoutSwitch.tsx';
import { MainMenu } from './MainMenu.tsx';

/** The bar along the top: what document this is, and the menus. */
export function TopBar() {
  return (
    <header className="top-bar">
      <nav className="top-bar-menus" aria-label="Main menu" data-tour="menus">
        <MainMenu />
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
