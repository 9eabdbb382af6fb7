import { useState } from 'react';
import { Button, FieldError, Input, Label, TextField } from 'react-aria-components';
import { addMeasurement, removeMeasurement, setMeasurement } from '../../../core/edit/measurements.ts';
import type { Measurement, Project, Subject } from '../../../core/model/project.ts';
import { measurementRange } from '../../../core/model/ranges.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { Fold, useEdit, WordChoice } from './fields.tsx';
import { isIsoDate, isSameSubject } from './reckon.ts';
import { MEASUREMENTS } from './words.ts';

type Kind = Measurement['kind'];
const KIND_NAMES = Object.fromEntries(Object.entries(MEASUREMENTS).map(([kind, { name }]) => [kind, name])) as Record<
  Kind,
  string
>;

/** What was measured on the selected thing. Measured losses replace computed ones in the path's own comparison. */
export function Measurements({ project, subject, name }: { project: Project; subject: Subject; name: string }) {
  const list = project.measurements.filter((each) => isSameSubject(each.subject, subject));
  return (
    <section className="panel-section" aria-label="Measurements">
      <h3 className="heading">Measurements</h3>
      {list.length === 0 ? (
        <p className="small soft">Nothing measured yet. What is written down here stands on the install sheet.</p>
      ) : null}
      {list.map((measurement) => (
        <MeasurementFold key={measurement.id} measurement={measurement} name={name} />
      ))}
      <NewMeasurement subject={subject} name={name} />
    </section>
  );
}

function MeasurementFold({ measurement, name }: { measurement: Measurement; name: string }) {
  const { quantity } = useFormat();
  const edit = useEdit();
  const words = MEASUREMENTS[measurement.kind];
  const title = `${words.name} ${quantity(measurement.value, words.unit, words.digits)}`;
  const change = (what: Parameters<typeof setMeasurement>[2]): boolean =>
    edit(`Measurement on ${name} changed`, (project) => setMeasurement(project, measurement.id, what));
  return (
    <Fold title={title} note={measurement.date ?? 'no date'}>
      {() => (
        <>
          <div className="particulars-fields">
            <KindAndValue measurement={measurement} onChange={change} />
            <QuantityField
              label="At frequency"
              value={measurement.frequencyMhz}
              unit="MHz"
              min={0.001}
              max={100_000}
              isOptional
              onCommit={(frequencyMhz) => change({ frequencyMhz })}
            />
            <DateRow value={measurement.date} onCommit={(date) => change({ date })} />
            <TextRow
              label="Instrument"
              value={measurement.instrument}
              onCommit={(instrument) => change({ instrument })}
            />
          </div>
          <TextRow label="Note" value={measurement.note} onCommit={(note) => change({ note })} />
          <Button
            className="button start"
            onPress={() =>
              edit(`Measurement on ${name} taken out`, (project) => removeMeasurement(project, measurement.id))
            }
          >
            Remove this measurement
          </Button>
        </>
      )}
    </Fold>
  );
}

function KindAndValue({
  measurement: { kind, value },
  onChange,
}: {
  measurement: { readonly kind: Kind; readonly value: number | null };
  onChange: (change: { kind: Kind } | { value: number }) => void;
}) {
  const { unit, digits } = MEASUREMENTS[kind];
  return (
    <>
      <WordChoice label="What" words={KIND_NAMES} value={kind} onChange={(chosen) => onChange({ kind: chosen })} />
      <QuantityField
        key={kind}
        label="Value"
        value={value}
        unit={unit}
        digits={digits}
        {...measurementRange(kind)}
        onCommit={(typed) => typed !== null && onChange({ value: typed })}
      />
    </>
  );
}

/** A measurement is written down once it has a value; everything else can follow. */
function NewMeasurement({ subject, name }: { subject: Subject; name: string }) {
  const edit = useEdit();
  const [kind, setKind] = useState<Kind | null>(null);
  if (kind === null) {
    return (
      <Button className="button start" onPress={() => setKind(subject.kind === 'run' ? 'insertion-loss-db' : 'vswr')}>
        Add a measurement
      </Button>
    );
  }
  const add = (value: number): void => {
    const measurement = { subject, kind, value, frequencyMhz: null, date: null };
    if (edit(`${KIND_NAMES[kind]} of ${name} written down`, (project) => addMeasurement(project, measurement))) {
      setKind(null);
    }
  };
  return (
    <div className="card stack">
      <div className="particulars-fields">
        <KindAndValue
          measurement={{ kind, value: null }}
          onChange={(change) => ('kind' in change ? setKind(change.kind) : add(change.value))}
        />
      </div>
      <div className="row-between">
        <span className="small soft">Type the value and press Enter.</span>
        <Button className="button" onPress={() => setKind(null)}>
          Cancel
        </Button>
      </div>
    </div>
  );
}

/** A day as 2026-05-31, or none. What was typed stays until it is one. */
/** A day as the year, month and day of ISO 8601; empty where it is not known. */
export function DateRow({ value, onCommit }: { value: string | null; onCommit: (date: string | null) => void }) {
  const [draft, setDraft] = useState<string | null>(null);
  const text = draft?.trim() ?? '';
  const isInvalid = draft !== null && text !== '' && !isIsoDate(text);
  const commit = (): void => {
    if (draft === null || isInvalid) return;
    setDraft(null);
    if (text !== (value ?? '')) onCommit(text === '' ? null : text);
  };
  return (
    <TextField
      className="react-aria-TextField field"
      value={draft ?? value ?? ''}
      isInvalid={isInvalid}
      onChange={setDraft}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape' && draft !== null) setDraft(null);
      }}
    >
      <Label>Date</Label>
      <Input placeholder="year-month-day" />
      <FieldError>{isInvalid ? 'Type a day as 2026-05-31, or leave it empty.' : null}</FieldError>
    </TextField>
  );
}
