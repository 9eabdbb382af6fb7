import { Button } from 'react-aria-components';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { setRun } from '../../../core/edit/runs.ts';
import { routedLengthM, runLengthM } from '../../../core/links/route.ts';
import type { Project, Run } from '../../../core/model/project.ts';
import { itemTag } from '../../../core/report/words.ts';
import { coaxLoss } from '../../../core/rf/coax.ts';
import { Choice } from '../../app/Choice.tsx';
import { useAppStore } from '../../store/context.ts';
import { useAssessment } from '../../store/derived.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { RunFactFields } from './Facts.tsx';
import { OpenChoice, useEdit, WordChoice } from './fields.tsx';
import { LineHeading, LineNotes } from './Line.tsx';
import { Measurements } from './Measurements.tsx';
import { Photos } from './Photos.tsx';
import { lossesOfRun, type RunLoss } from './reckon.ts';
import { FindingsAbout, HangsOn } from './Shared.tsx';
import { STATUSES } from './words.ts';

type RunChange = Parameters<typeof setRun>[2];

/** Everything about one coaxial run. */
export function RunView({ project, run }: { project: Project; run: Run }) {
  const edit = useEdit();
  const subject = { kind: 'run', id: run.id } as const;
  const change = (what: string, values: RunChange): boolean =>
    edit(`${run.number}: ${what}`, (before) => setRun(before, run.id, values));
  return (
    <>
      <LineHeading
        project={project}
        line={run}
        what={indexProject(project).parts.get(run.cableId)?.name ?? 'Unknown cable'}
      />
      <section className="panel-section" aria-label="Cable">
        <div className="particulars-fields particulars-fields--three">
          <TextRow
            label="Number"
            value={run.number}
            isRequired
            onCommit={(number) => change(`is now ${number}`, { number })}
          />
          <TextRow
            label="Label text, if another"
            value={run.labelText ?? ''}
            onCommit={(text) => change('label changed', { labelText: text === '' ? null : text })}
          />
          <WordChoice
            label="Status"
            words={STATUSES}
            value={run.status}
            onChange={(status) => change('status changed', { status })}
          />
        </div>
        <CableChoice project={project} run={run} onChange={(cableId) => change('another cable', { cableId })} />
        <EndConnectors project={project} run={run} onChange={change} />
      </section>
      <Lengths project={project} run={run} onChange={change} />
      <Losses project={project} run={run} />
      <RunFactFields runId={run.id} number={run.number} facts={run.facts} />
      <HangsOn subject={subject} />
      <FindingsAbout subject={subject} />
      <Measurements project={project} subject={subject} name={run.number} />
      <Photos project={project} subject={subject} name={run.number} />
      <LineNotes subject={subject} line={run} onCommit={(notes) => change('notes changed', { notes })} />
    </>
  );
}

/** Every cable there is, with what this very run would lose in it, how thick it is and how far it may be bent. */
function CableChoice({ project, run, onChange }: { project: Project; run: Run; onChange: (cableId: string) => void }) {
  const { quantity } = useFormat();
  const frequencyMhz = lossesOfRun(useAssessment(), run.id)[0]?.frequencyMhz ?? null;
  const lengthM = runLengthM(project, run);
  const options = [...indexProject(project).parts.values()].flatMap((part) => {
    if (part.kind !== 'coax') return [];
    const { outsideDiameterMm, bendOnceMm } = part.figures;
    const loss =
      frequencyMhz === null
        ? ''
        : `${quantity(coaxLoss(part, lengthM, frequencyMhz).lossDb, 'dB')} in this length at ${quantity(frequencyMhz, 'MHz', 1)}; `;
    const size = `${quantity(outsideDiameterMm.value, 'mm', 1)} thick; bends once to ${quantity(bendOnceMm.value, 'mm')}`;
    return [{ id: part.id, name: part.name, note: loss + size }];
  });
  const chosen = options.find(({ id }) => id === run.cableId);
  return (
    <div className="stack">
      <Choice
        label="Cable"
        options={options}
        value={run.cableId}
        onChange={(id) => id !== run.cableId && onChange(id)}
      />
      {chosen ? <p className="small soft">{chosen.note}</p> : null}
    </div>
  );
}

function EndConnectors({
  project,
  run,
  onChange,
}: {
  project: Project;
  run: Run;
  onChange: (what: string, values: RunChange) => void;
}) {
  const connectors = Object.fromEntries(
    [...indexProject(project).parts.values()].flatMap((part) =>
      part.kind === 'connector' ? [[part.id, part.name]] : [],
    ),
  );
  return (
    <div className="particulars-fields particulars-fields--two">
      <OpenChoice
        label={`Plug at ${itemTag(project, run.from.itemId)}`}
        words={connectors}
        value={run.connectorFromId ?? undefined}
        open="None (captive or bare)"
        onChange={(id) => onChange('plug changed', { connectorFromId: id ?? null })}
      />
      <OpenChoice
        label={`Plug at ${itemTag(project, run.to.itemId)}`}
        words={connectors}
        value={run.connectorToId ?? undefined}
        open="None (captive or bare)"
        onChange={(id) => onChange('plug changed', { connectorToId: id ?? null })}
      />
    </div>
  );
}

function Lengths({
  project,
  run,
  onChange,
}: {
  project: Project;
  run: Run;
  onChange: (what: string, values: RunChange) => void;
}) {
  const store = useAppStore();
  const { quantity } = useFormat();
  const routeM = routedLengthM(project, run) - run.slackM;
  const bends = run.via.length === 0 ? 'goes straight' : `${run.via.length} ${run.via.length === 1 ? 'bend' : 'bends'}`;
  return (
    <section className="panel-section" aria-label="Length">
      <div className="panel-head">
        <h3 className="heading">Length</h3>
        <span className="row">
          <span className="small soft">{bends}</span>
          <Button className="button" onPress={() => store.getState().setView({ dialog: 'route' })}>
            Edit route…
          </Button>
        </span>
      </div>
      <LengthFields run={run} onChange={onChange} />
      <dl className="facts">
        <dt>Along the drawn route</dt>
        <dd>{quantity(routeM, 'm', 2)}</dd>
        <dt>Cut length</dt>
        <dd>
          <strong>{quantity(runLengthM(project, run), 'm', 2)}</strong>{' '}
          <span className="soft">{run.measuredLengthM === null ? '(route and slack)' : '(as measured)'}</span>
        </dd>
      </dl>
    </section>
  );
}

function LengthFields({ run, onChange }: { run: Run; onChange: (what: string, values: RunChange) => void }) {
  return (
    <div className="particulars-fields particulars-fields--two">
      <QuantityField
        label="Slack for service loops"
        value={run.slackM}
        unit="m"
        digits={2}
        min={0}
        max={2000}
        onCommit={(slackM) => slackM !== null && onChange('slack changed', { slackM })}
      />
      <QuantityField
        label="Measured on the boat"
        value={run.measuredLengthM}
        unit="m"
        digits={2}
        min={0}
        max={2000}
        isOptional
        onCommit={(measuredLengthM) => onChange('measured length changed', { measuredLengthM })}
      />
    </div>
  );
}

/** What this run loses in each path that goes through it. */
function Losses({ project, run }: { project: Project; run: Run }) {
  const store = useAppStore();
  const losses = lossesOfRun(useAssessment(), run.id);
  return (
    <section className="panel-section" aria-label="Loss">
      <div className="panel-head">
        <h3 className="heading">Loss</h3>
        <Button className="button link small" onPress={() => store.getState().showPanel('path-loss')}>
          See it in Path loss
        </Button>
      </div>
      {losses.length === 0 ? (
        <p className="small soft">
          No path from a set to an antenna goes through this run yet. Connect both of its ends through.
        </p>
      ) : (
        <LossTable project={project} losses={losses} />
      )}
    </section>
  );
}

function LossTable({ project, losses }: { project: Project; losses: readonly RunLoss[] }) {
  const { quantity } = useFormat();
  return (
    <div className="table-scroll">
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Path</th>
            <th scope="col" className="num">
              Frequency
            </th>
            <th scope="col" className="num">
              Run and plugs
            </th>
            <th scope="col" className="num">
              Whole path
            </th>
          </tr>
        </thead>
        <tbody>
          {losses.map(({ pathId, radioId, antennaId, frequencyMhz, runDb, pathDb }) => (
            <tr key={pathId}>
              <th scope="row">
                {itemTag(project, radioId)} to {itemTag(project, antennaId)}
              </th>
              <td className="num">{quantity(frequencyMhz, 'MHz', 1)}</td>
              <td className="num">{quantity(runDb, 'dB')}</td>
              <td className="num">{quantity(pathDb, 'dB')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
