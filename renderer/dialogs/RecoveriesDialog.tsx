import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Recovery } from '../../electron/contract.ts';
import { AppDialog } from '../app/AppDialog.tsx';
import { openRecovered } from '../app/openActions.ts';
import { discardRecovery } from '../app/recoveries.ts';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { whenSaid } from '../ui/when.ts';

/** Work that was never saved, from windows that are gone. Nothing of it is thrown away unless that is asked for here. */
export function RecoveriesDialog() {
  return (
    <AppDialog id="recoveries" title="Recovered work" isWide>
      {(close) => <Recoveries close={close} />}
    </AppDialog>
  );
}

function Recoveries({ close }: { close: () => void }) {
  const recoveries = useApp((state) => state.recoveries);
  return (
    <>
      <div className="dialog-body">
        {recoveries.length === 0 ? (
          <p className="empty">There is no unsaved work to recover.</p>
        ) : (
          <p>
            These documents were not saved when their window closed. Opening one loses nothing: it stays here until you
            save it or discard it.
          </p>
        )}
        <ul className="recoveries">
          {recoveries.map((recovery) => (
            <RecoveryCard key={recovery.id} recovery={recovery} close={close} />
          ))}
        </ul>
      </div>
      <div className="dialog-actions">
        <Button className="button" onPress={close}>
          {recoveries.length === 0 ? 'Close' : 'Later'}
        </Button>
      </div>
    </>
  );
}

function RecoveryCard({ recovery, close }: { recovery: Recovery; close: () => void }) {
  const store = useAppStore();
  const host = useHost();
  const [isSure, setSure] = useState(false);
  const { id, title, name, keptAt, bytes, summary } = recovery;
  const shown = title || name || 'Without a title';
  const open = async (): Promise<void> => {
    if (await openRecovered(store, host, id)) close();
  };
  return (
    <li className="card recovery">
      <div>
        <h3 className="heading">{shown}</h3>
        <p className="small soft">
          {name === '' ? 'Never saved to a file' : name}, kept {whenSaid(keptAt)}, {sizeSaid(bytes)}
        </p>
        <p className="small">{summary}</p>
      </div>
      {isSure ? (
        <div className="row">
          <span className="small">Discard for good?</span>
          <Button className="button" onPress={() => setSure(false)} autoFocus>
            Keep
          </Button>
          <Button
            className="button button--danger"
            aria-label={`Discard ${shown} for good`}
            onPress={() => void discardRecovery(store, host, id)}
          >
            Discard
          </Button>
        </div>
      ) : (
        <div className="row">
          <Button className="button" aria-label={`Discard ${shown}`} onPress={() => setSure(true)}>
            Discard…
          </Button>
          <Button className="button button--primary" aria-label={`Open ${shown}`} onPress={() => void open()}>
            Open
          </Button>
        </div>
      )}
    </li>
  );
}

const sizeSaid = (bytes: number): string =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
