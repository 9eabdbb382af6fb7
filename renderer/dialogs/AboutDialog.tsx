import { useEffect, useState } from 'react';
import { Button, Input, SearchField } from 'react-aria-components';
import type { About } from '../../electron/contract.ts';
import { AppDialog } from '../app/AppDialog.tsx';
import { useHost } from '../host/context.ts';
import { useAppStore } from '../store/context.ts';
import { type Licence, loadLicences, matchingLicences } from './licences.ts';
import './dialogs.css';

/** Which program this is, how its figures are meant, and the licences of everything it is made of. */
export function AboutDialog() {
  return (
    <AppDialog id="about" title="About Backstay" isWide>
      {(close) => (
        <>
          <div className="dialog-body">
            <Program />
            <p>
              Backstay reckons what cables lose, how far radios reach and what failures take away, from the drawing and
              from figures whose sources are shown beside them. The results are estimates for planning, each with its
              tolerance: a measurement aboard outweighs them. They are no survey and no statement that a boat or an
              installation complies with anything. Local codes and a licensed or certified installer govern.
            </p>
            <p>
              Backstay uses no network and sends nothing to anyone: no telemetry, no update checks. Documents, recovery
              copies and settings stay on this machine.
            </p>
            <LogPlace />
            <Licences />
          </div>
          <div className="dialog-actions">
            <Button className="button button--primary" onPress={close}>
              Close
            </Button>
          </div>
        </>
      )}
    </AppDialog>
  );
}

function Program() {
  const host = useHost();
  const [about, setAbout] = useState<About | null>(null);
  useEffect(() => {
    void host.about().then((answer) => setAbout(answer.ok ? answer.value : null));
  }, [host]);
  const parts = [
    about ? `Version ${about.version}` : '',
    about?.electron ? `Electron ${about.electron}` : '',
    about?.chromium ? `Chromium ${about.chromium}` : '',
    host.kind === 'browser' ? 'in the browser' : '',
  ];
  return <p className="soft">{parts.filter(Boolean).join(', ')}</p>;
}

/** Only the desktop program writes a log. */
function LogPlace() {
  const host = useHost();
  const store = useAppStore();
  if (host.kind === 'browser') return null;
  const show = async (): Promise<void> => {
    const answer = await host.showLog();
    if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  };
  return (
    <div className="row-between">
      <p className="small soft">The log says what went wrong and when, and holds nothing of your documents.</p>
      <Button className="button" onPress={() => void show()}>
        Show the log file
      </Button>
    </div>
  );
}

function Licences() {
  const [licences, setLicences] = useState<readonly Licence[] | string | null>(null);
  const [query, setQuery] = useState('');
  useEffect(() => {
    void loadLicences((address) => fetch(address)).then(setLicences);
  }, []);
  if (licences === null) return null;
  if (typeof licences === 'string') return <p className="note">{licences}</p>;
  const found = matchingLicences(licences, query);
  return (
    <section className="stack" aria-label="Licences">
      <div className="row-between">
        <h3 className="heading">Made with, and under which licence</h3>
        <SearchField aria-label="Search the licences" value={query} onChange={setQuery}>
          <Input placeholder="Name or licence" />
        </SearchField>
      </div>
      <ul className="licences">
        {found.map(({ name, version, licence, text }) => (
          <li key={`${name} ${version}`}>
            <details>
              <summary>
                <span>{name}</span> <span className="soft">{version}</span>
                <span className="licence-kind">{licence}</span>
              </summary>
              <pre className="licence-text">{text}</pre>
            </details>
          </li>
        ))}
      </ul>
      {found.length === 0 ? <p className="empty">Nothing by that name.</p> : null}
    </section>
  );
}
