import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '../styles/tokens.css';
import '../styles/base.css';
import { HostContext } from '../host/context.ts';
import { createHost } from '../host/createHost.ts';
import { StoreContext } from '../store/context.ts';
import { loadPreferences, savePreferences } from '../store/preferences.ts';
import { createAppStore, isUnsaved } from '../store/store.ts';
import { App } from './App.tsx';
import { DEMOS, demoProject, showOpened } from './fileActions.ts';

const host = createHost(window);
const store = createAppStore(demoProject(DEMOS[0].id), loadPreferences(localStorage));

store.subscribe((state, before) => {
  if (state.preferences !== before.preferences) savePreferences(localStorage, state.preferences);
  if (isUnsaved(state) !== isUnsaved(before) || state.project.title !== before.project.title) {
    host.setUnsaved({ unsaved: isUnsaved(state), title: state.project.title });
  }
});
host.onOpened((opened) => showOpened(store, opened));

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <HostContext value={host}>
      <StoreContext value={store}>
        <App />
      </StoreContext>
    </HostContext>
  </StrictMode>,
);
