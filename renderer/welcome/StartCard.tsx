import { Button } from 'react-aria-components';
import { openFile, openRecent } from '../app/openActions.ts';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import type { AppState } from '../store/store.ts';
import { whenSaid } from '../ui/when.ts';
import './welcome.css';

/** How many files the card offers; the File menu has them all. */
const OFFERED = 5;

/** Nothing has been done yet, and nothing else wants to be read. */
const isAtStart = (state: AppState): boolean =>
  state.isStarting &&
  state.recents.length > 0 &&
  state.tourStep === null &&
  state.dialog === null &&
  state.history.past.length + state.history.future.length === 0;

/** At a start without a document: the files used last, over a corner of the demo boat. Any edit or opening ends it. */
export function StartCard() {
  const store = useAppStore();
  const host = useHost();
  const isShown = useApp(isAtStart);
  const recents = useApp((state) => state.recents);
  if (!isShown) return null;
  const close = (): void => store.getState().setView({ isStarting: false });
  return (
    <section className="start-card" aria-label="Go on with">
      <h2 className="heading">Go on with</h2>
      <ul className="start-files">
        {recents.slice(0, OFFERED).map(({ id, name, folder, lastUsed, missing }) => (
          <li key={id}>
            <Button className="button button--quiet start-file" onPress={() => void openRecent(store, host, id)}>
              <span>{name}</span>
              <span className="small soft">
                {missing ? 'Not there now' : whenSaid(lastUsed)}, in {folder}
              </span>
            </Button>
          </li>
        ))}
      </ul>
      <div className="row-between">
        <Button className="button" onPress={close}>
          Stay with the demo
        </Button>
        <span className="row">
          <Button className="button" onPress={() => void openFile(store, host)}>
            Open…
          </Button>
          <Button className="button button--primary" onPress={() => store.getState().setView({ dialog: 'new-boat' })}>
            New boat…
          </Button>
        </span>
      </div>
    </section>
  );
}
