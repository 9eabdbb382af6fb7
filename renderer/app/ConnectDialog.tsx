import { useMemo, useState } from 'react';
import { Form } from 'react-aria-components';
import { indexProject, portOf } from '../../core/catalogue/lookup.ts';
import { defaultCableId } from '../../core/edit/cables.ts';
import type { Endpoint, Project } from '../../core/model/project.ts';
import { allPorts, joinPorts, portChoices } from '../commands/join.ts';
import { portWords } from '../commands/words.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { AppDialog, DialogActions } from './AppDialog.tsx';
import { selectedItemIds } from './action.ts';
import { Choice, type Option } from './Choice.tsx';

const keyOf = (end: Endpoint): string => `${end.itemId}/${end.portId}`;

/** Draws a run, feed or link without the pointer: from which port, to which, and the cable. */
export function ConnectDialog() {
  return (
    <AppDialog id="connect" title="Connect">
      {(close) => <Connect close={close} />}
    </AppDialog>
  );
}

/** What the dialog knows of a connection being chosen. */
function useConnection() {
  const project = useApp((state) => state.project);
  const ids = useApp((state) => selectedItemIds(state).join(' '));
  const ports = useMemo(() => allPorts(project), [project]);
  const own = ports.filter(({ endpoint }) => ids.split(' ').includes(endpoint.itemId));
  const [fromKey, setFromKey] = useState(() => (own[0] ? keyOf(own[0].endpoint) : null));
  const [toKey, setToKey] = useState<string | null>(null);
  const [cableId, setCableId] = useState<string | null>(null);
  const from = ports.find(({ endpoint }) => keyOf(endpoint) === fromKey)?.endpoint;
  const choices = useMemo(() => (from ? portChoices(project, from) : []), [project, from]);
  const to = choices.find(({ endpoint }) => keyOf(endpoint) === toKey);
  const isRun = from !== undefined && portOf(project, from)?.medium === 'rf';
  const cable = cableId ?? (from && to && isRun ? usualCable(project, from, to.endpoint) : null);
  const chooseFrom = (key: string): void => {
    setFromKey(key);
    setToKey(null);
  };
  return { project, own, from, fromKey, chooseFrom, choices, to, toKey, setToKey, isRun, cable, setCableId };
}

function Connect({ close }: { close: () => void }) {
  const store = useAppStore();
  const { project, own, from, fromKey, chooseFrom, choices, to, toKey, setToKey, isRun, cable, setCableId } =
    useConnection();
  const connect = (): void => {
    if (from && to && joinPorts(store, from, to.endpoint, isRun && cable ? cable : undefined)) close();
  };
  const fromOptions = own.map(({ endpoint }) => ({ id: keyOf(endpoint), name: portWords(project, endpoint) }));
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        connect();
      }}
    >
      <div className="dialog-body">
        {own.length === 0 ? <p>What is selected has no ports to connect.</p> : null}
        <Choice label="From port" options={fromOptions} value={fromKey} onChange={chooseFrom} autoFocus />
        <Choice label="To port" options={toOptions(project, choices)} value={toKey} onChange={setToKey} />
        {isRun ? <Choice label="Cable" options={cableOptions(project)} value={cable} onChange={setCableId} /> : null}
        {to?.fit.fits && to.fit.caution ? <p className="caution">{to.fit.caution}</p> : null}
        {to && !to.fit.fits ? <p className="error">{to.fit.reason}</p> : null}
      </div>
      <DialogActions close={close} name="Connect" isEnabled={to?.fit.fits === true} />
    </Form>
  );
}

/** What fits first; the rest with the reason why not. */
function toOptions(project: Project, choices: ReturnType<typeof portChoices>): readonly Option[] {
  const option = ({ endpoint, fit }: (typeof choices)[number]): Option => ({
    id: keyOf(endpoint),
    name: portWords(project, endpoint),
    note: fit.fits ? (fit.caution ?? 'Fits') : fit.reason,
    isRefused: !fit.fits,
  });
  return [...choices.filter(({ fit }) => fit.fits), ...choices.filter(({ fit }) => !fit.fits)].map(option);
}

function usualCable(project: Project, from: Endpoint, to: Endpoint): string | null {
  const [a, b] = [portOf(project, from), portOf(project, to)];
  return a?.medium === 'rf' && b?.medium === 'rf' ? defaultCableId(project, a, b) : null;
}

/** Every coax of the catalogue and of the user's own. */
export function cableOptions(project: Project): readonly Option[] {
  return [...indexProject(project).parts.values()]
    .filter((part) => part.kind === 'coax')
    .map(({ id, name, description }) => ({ id, name, note: description }));
}
