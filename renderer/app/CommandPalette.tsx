import { Autocomplete, Input, Keyboard, ListBox, ListBoxItem, SearchField, useFilter } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { AppDialog } from './AppDialog.tsx';
import { actionsFor } from './actions.ts';
import { shownChord } from './keys.ts';

/** Every command by name. */
export function CommandPalette() {
  return (
    <AppDialog id="palette" title="Commands">
      {(close) => <Commands close={close} />}
    </AppDialog>
  );
}

function Commands({ close }: { close: () => void }) {
  const store = useAppStore();
  const host = useHost();
  const state = useApp((current) => current);
  const { contains } = useFilter({ sensitivity: 'base' });
  const actions = actionsFor(host);
  const perform = (id: string): void => {
    const action = actions.find((known) => known.id === id);
    close();
    // After the dialog has gone and given the focus back, so that a command may open another dialog.
    if (action) requestAnimationFrame(() => void action.perform(store, host));
  };
  return (
    <div className="dialog-body palette">
      <Autocomplete filter={contains}>
        <SearchField autoFocus aria-label="Search commands">
          <Input placeholder="Type part of a command’s name" />
        </SearchField>
        <ListBox
          aria-label="Commands"
          onAction={(key) => perform(String(key))}
          renderEmptyState={() => <p className="empty">No command has that in its name.</p>}
        >
          {actions.map((action) => (
            <ListBoxItem key={action.id} id={action.id} textValue={action.name} isDisabled={!action.isEnabled(state)}>
              <span>
                <span className="faint">{action.group} </span>
                {action.name}
              </span>
              {action.keys[0] ? <Keyboard>{shownChord(action.keys[0])}</Keyboard> : null}
            </ListBoxItem>
          ))}
        </ListBox>
      </Autocomplete>
    </div>
  );
}
