import { Button } from 'react-aria-components';
import { middleOfRoute } from '../../core/edit/geometry.ts';
import { addBend, moveBend, removeBend } from '../../core/edit/route.ts';
import { runLengthM, runRoute } from '../../core/links/route.ts';
import { type Position, positionSchema } from '../../core/model/boat.ts';
import type { Project, Run } from '../../core/model/project.ts';
import { formatQuantity } from '../../core/units/format.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { QuantityField } from '../ui/QuantityField.tsx';
import { AppDialog } from './AppDialog.tsx';
import { selectedRunId } from './action.ts';
import { Choice } from './Choice.tsx';
import { Icon } from './icons.tsx';

const FREE = 'free';
const AXES = [
  { key: 'xM', name: 'x' },
  { key: 'yM', name: 'y' },
  { key: 'zM', name: 'z' },
] as const satisfies readonly { key: keyof Position; name: string }[];

/** The bends of the selected run as a list: place or x, y, z of each; add, move and remove them without the pointer. */
export function RouteDialog() {
  return (
    <AppDialog id="route" title="Edit route" isWide>
      {(close) => <Route close={close} />}
    </AppDialog>
  );
}

function Route({ close }: { close: () => void }) {
  const store = useAppStore();
  const project = useApp((state) => state.project);
  const runId = useApp(selectedRunId);
  const run = project.runs.find(({ id }) => id === runId);
  return (
    <>
      <div className="dialog-body">
        {run ? <Bends project={project} run={run} /> : <p>Select one cable run first.</p>}
      </div>
      <div className="dialog-actions">
        {run ? (
          <Button
            className="button"
            onPress={() => {
              const position = middleOfRoute(runRoute(project, run));
              if (position) store.getState().edit(`${run.number} bent`, (p) => addBend(p, run.id, { position }));
            }}
          >
            Add a bend in the middle
          </Button>
        ) : null}
        <Button className="button button--primary" onPress={close}>
          Done
        </Button>
      </div>
    </>
  );
}

function Bends({ project, run }: { project: Project; run: Run }) {
  const preferences = useApp((state) => state.preferences);
  const tag = (itemId: string): string => project.items.find(({ id }) => id === itemId)?.tag ?? itemId;
  const length = formatQuantity({ value: runLengthM(project, run), unit: 'm' }, preferences);
  return (
    <>
      <p>
        {run.number} from {tag(run.from.itemId)} to {tag(run.to.itemId)}, {length}
        {run.measuredLengthM === null ? ' along this route' : ' as measured; the route does not change it'}.
      </p>
      {run.via.length === 0 ? <p className="soft">It goes straight. Add a bend to lead it round something.</p> : null}
      <ol className="stack bends">
        {run.via.map((bend, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a bend is known by its index only
          <BendRow key={index} {...{ project, run, index, bend }} />
        ))}
      </ol>
    </>
  );
}

function BendRow({
  project,
  run,
  index,
  bend,
}: {
  project: Project;
  run: Run;
  index: number;
  bend: Run['via'][number];
}) {
  const store = useAppStore();
  const move = (position: Position, placeId: string | null): boolean =>
    store
      .getState()
      .edit(`Bend ${index + 1} of ${run.number} moved`, (p) => moveBend(p, run.id, index, { position, placeId }));
  const places = [{ id: FREE, name: 'No place' }, ...project.places.map(({ id, name }) => ({ id, name }))];
  return (
    <li className="bend-row">
      <Choice
        label={`Bend ${index + 1} at`}
        options={places}
        value={bend.placeId ?? FREE}
        onChange={(id) => move(bend.position, id === FREE ? null : id)}
      />
      {AXES.map(({ key, name }) => (
        <QuantityField
          key={key}
          label={name}
          value={bend.position[key]}
          unit="m"
          digits={2}
          min={positionSchema.shape[key].minValue ?? -20}
          max={positionSchema.shape[key].maxValue ?? 200}
          onCommit={(value) => value !== null && move({ ...bend.position, [key]: value }, null)}
        />
      ))}
      <Button
        className="button button--icon"
        aria-label={`Remove bend ${index + 1}`}
        onPress={() => store.getState().edit(`Bend taken out of ${run.number}`, (p) => removeBend(p, run.id, index))}
      >
        <Icon name="close" />
      </Button>
    </li>
  );
}
