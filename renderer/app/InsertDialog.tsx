import { useMemo, useState } from 'react';
import { Form } from 'react-aria-components';
import { indexProject } from '../../core/catalogue/lookup.ts';
import { insertIntoRun } from '../../core/edit/inline.ts';
import type { Position } from '../../core/model/boat.ts';
import { isPlaceable } from '../../core/model/placeable.ts';
import type { Project } from '../../core/model/project.ts';
import { goesIntoRun, insertPart } from '../commands/place.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { AppDialog, DialogActions } from './AppDialog.tsx';
import { selectedRunId } from './action.ts';
import { Choice, type Option } from './Choice.tsx';

const MIDDLE = 'middle';

/** Puts a splitter, joint or arrestor into the selected run without the pointer. */
export function InsertDialog() {
  return (
    <AppDialog id="insert" title="Insert into run">
      {(close) => <Insert close={close} />}
    </AppDialog>
  );
}

function Insert({ close }: { close: () => void }) {
  const store = useAppStore();
  const project = useApp((state) => state.project);
  const runId = useApp(selectedRunId);
  const run = project.runs.find(({ id }) => id === runId);
  const parts = useMemo(
    () => [...indexProject(project).parts.values()].filter(isPlaceable).filter(goesIntoRun),
    [project],
  );
  const options = useMemo(
    () =>
      parts.map((part): Option => {
        const reason = runId === null ? null : refusal(project, runId, part.id);
        return { id: part.id, name: part.name, note: reason ?? part.description, isRefused: reason !== null };
      }),
    [parts, project, runId],
  );
  const [partId, setPartId] = useState<string | null>(null);
  const [spot, setSpot] = useState(MIDDLE);
  const spots = useMemo(() => spotOptions(project, runId), [project, runId]);
  const part = parts.find(({ id }) => id === partId);
  const chosen = options.find(({ id }) => id === partId);
  const insert = (): void => {
    if (!part || runId === null) return;
    if (insertPart(store, part, runId, spots.find(({ id }) => id === spot)?.position)) close();
  };
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        insert();
      }}
    >
      <div className="dialog-body">
        <p>{run ? `Into run ${run.number}.` : 'Select one cable run first.'}</p>
        <Choice label="Part" options={options} value={partId} onChange={setPartId} autoFocus />
        {chosen?.isRefused ? <p className="error">{chosen.note}</p> : null}
        <Choice label="Where on the run" options={spots} value={spot} onChange={setSpot} />
      </div>
      <DialogActions
        close={close}
        name="Insert"
        isEnabled={part !== undefined && run !== undefined && !chosen?.isRefused}
      />
    </Form>
  );
}

/** The middle of the run, and each bend of it. */
function spotOptions(project: Project, runId: string | null): readonly (Option & { readonly position?: Position })[] {
  const run = project.runs.find(({ id }) => id === runId);
  const bends = (run?.via ?? []).map(({ position, placeId }, i) => {
    const place = project.places.find(({ id }) => id === placeId);
    return { id: `bend-${i}`, name: place ? `Bend ${i + 1}, at ${place.name}` : `Bend ${i + 1}`, position };
  });
  return [{ id: MIDDLE, name: 'In the middle' }, ...bends];
}

function refusal(project: Project, runId: string, partId: string): string | null {
  try {
    insertIntoRun(project, runId, partId);
    return null;
  } catch (error) {
    if (error instanceof Error && error.name === 'RefusedEdit') return error.message;
    throw error;
  }
}
