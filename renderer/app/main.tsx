import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '../styles/tokens.css';
import '../styles/base.css';
import { HostContext } from '../host/context.ts';
import { createHost } from '../host/createHost.ts';
import { StoreContext } from '../store/context.ts';
import { loadPreferences, savePreferences } from '../store/preferences.ts';
import { inOrder, keepRecoveryCopies } from '../store/recovery.ts';
import { createAppStore, isUnsaved } from '../store/store.ts';
import { App } from './App.tsx';
import { DEMOS, demoProject } from './demos.ts';
import { showOpened } from './openActions.ts';
import { refreshRecents } from './recents.ts';
import { offerRecoveries } from './recoveries.ts';

const host = inOrder(createHost(window));
const store = createAppStore(demoProject(DEMOS[0].id), loadPreferences(localStorage));

store.subscribe((state, before) => {
  if (state.preferences !== before.preferences) savePreferences(localStorage, state.preferences);
  if (isUnsaved(state) !== isUnsaved(before) || state.project.title !== before.project.title) {
    host.setUnsaved({ unsaved: isUnsaved(state), title: state.project.title });
  }
});
let wasOpenedOutside = false;
host.onOpened((opened) => {
  wasOpenedOutside = true;
  void showOpened(store, host, opened);
});
host.onProgress((openProgress) => store.getState().setView({ openProgress }));

const recovery = keepRecoveryCopies(store, host, (work, ms) => {
  const timer = setTimeout(work, ms);
  return () => clearTimeout(timer);
});
// A window that is left may not come back.
for (const sign of ['blur', 'pagehide']) window.addEventListener(sign, () => recovery.flush());
document.addEventListener('visibilitychange', () => recovery.flush());
void refreshRecents(store, host);
void offerRecoveries(store, host).then(() => {
  const isTest = new URLSearchParams(location.search).get('test') === '1';
  // Whoever came with a document of their own has work to do; the tour waits for another day.
  if (isTest || wasOpenedOutside) return;
  const { preferences, setView } = store.getState();
  setView(preferences.tourSeen ? { isStarting: true } : { tourStep: 0 });
});

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
