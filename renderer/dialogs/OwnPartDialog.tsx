import { useState } from 'react';
import { Form, Input, Label, TextField } from 'react-aria-components';
import { CATALOGUE } from '../../core/catalogue/catalogue.ts';
import { addPart } from '../../core/edit/parts.ts';
import type { Basis, Figure } from '../../core/model/figure.ts';
import type { Part, PartKind } from '../../core/model/part.ts';
import { figureRange } from '../../core/model/ranges.ts';
import { BASIS_WORDS } from '../../core/report/words.ts';
import { DialogActions } from '../app/AppDialog.tsx';
import { Choice } from '../app/Choice.tsx';
import { useAppStore } from '../store/context.ts';
import { figureWords } from '../ui/figureWords.ts';
import { QuantityField } from '../ui/QuantityField.tsx';
import { DialogFrame, type DialogProps } from './DialogFrame.tsx';
import { withOwnValue } from './ownFigure.ts';
import './dialogs.css';

const KINDS: readonly { readonly id: PartKind; readonly name: string }[] = [
  { id: 'radio', name: 'Radio' },
  { id: 'antenna', name: 'Antenna' },
  { id: 'inline', name: 'Splitter, joint or other device in the feeder' },
  { id: 'position-source', name: 'Position source' },
  { id: 'standalone', name: 'Stand-alone set' },
  { id: 'power', name: 'Battery, breaker or other supply' },
  { id: 'equipment', name: 'Other equipment' },
  { id: 'coax', name: 'Coaxial cable' },
  { id: 'connector', name: 'Connector' },
  { id: 'conductor', name: 'DC conductor' },
];
const BASES = Object.entries(BASIS_WORDS).map(([id, name]) => ({ id, name }));

/** A part of the user's own: starts from the nearest generic one, then takes the figures of the real thing. */
export function OwnPartDialog(props: DialogProps) {
  return (
    <DialogFrame {...props} title="Add your own part">
      {(close) => <OwnPart close={close} />}
    </DialogFrame>
  );
}

const blank = (start: Part): Part => ({ ...start, id: '', name: '', description: '' });
const firstOf = (kind: PartKind): Part | undefined => CATALOGUE.find((part) => part.kind === kind);

function OwnPart({ close }: { close: () => void }) {
  const store = useAppStore();
  const [start, setStart] = useState<Part | undefined>(() => firstOf('radio'));
  const [part, setPart] = useState<Part | undefined>(() => start && blank(start));
  if (!start || !part) return null;
  const startFrom = (next: Part | undefined): void => {
    setStart(next);
    setPart(next && { ...blank(next), name: part.name, description: part.description });
  };
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        const named = { ...part, name: part.name.trim(), description: part.description.trim() || start.description };
        if (store.getState().edit(`Own part added: ${named.name}`, (project) => addPart(project, named))) close();
      }}
    >
      <div className="dialog-body stack">
        <StartChoice start={start} onChange={startFrom} />
        <TextField value={part.name} onChange={(name) => setPart({ ...part, name })} isRequired autoFocus>
          <Label>Name</Label>
          <Input />
        </TextField>
        <TextField value={part.description} onChange={(description) => setPart({ ...part, description })}>
          <Label>Description</Label>
          <Input placeholder={start.description} />
        </TextField>
        <Figures start={start} part={part} onChange={setPart} />
      </div>
      <DialogActions close={close} name="Add part" isEnabled={part.name.trim() !== ''} />
    </Form>
  );
}

function StartChoice({ start, onChange }: { start: Part; onChange: (start: Part | undefined) => void }) {
  return (
    <div className="field-pair">
      <Choice
        label="Kind"
        options={KINDS}
        value={start.kind}
        onChange={(kind) => onChange(firstOf(kind as PartKind))}
      />
      <Choice
        label="Start from"
        options={CATALOGUE.filter(({ kind }) => kind === start.kind).map(({ id, name }) => ({ id, name }))}
        value={start.id}
        onChange={(id) => onChange(CATALOGUE.find((known) => known.id === id))}
      />
    </div>
  );
}

function Figures({ start, part, onChange }: { start: Part; part: Part; onChange: (part: Part) => void }) {
  const generic: Readonly<Record<string, Figure | undefined>> = start.figures;
  const figures: Readonly<Record<string, Figure | undefined>> = part.figures;
  return Object.entries(figures).map(([key, figure]) =>
    figure ? (
      <FigureRow
        // Another kind starts with other figures: what is typed in one must not turn up in the other.
        key={`${part.kind} ${key}`}
        figureKey={key}
        figure={figure}
        generic={generic[key]}
        onChange={(next) => onChange({ ...part, figures: { ...part.figures, [key]: next } } as Part)}
      />
    ) : null,
  );
}

function FigureRow({
  figureKey,
  figure,
  generic,
  onChange,
}: {
  figureKey: string;
  figure: Figure;
  generic: Figure | undefined;
  onChange: (figure: Figure) => void;
}) {
  const { name, unit, digits } = figureWords(figureKey);
  const { min, max } = figureRange(figureKey);
  return (
    <div className="own-part-figures">
      <QuantityField
        label={name}
        value={figure.value}
        unit={unit}
        digits={digits}
        min={min}
        max={max}
        onCommit={(value) => value !== null && onChange(withOwnValue(figure, generic, value))}
      />
      <QuantityField
        label="Plus or minus"
        value={figure.tolerance}
        unit={unit}
        digits={digits}
        min={0}
        onCommit={(tolerance) => tolerance !== null && onChange({ ...figure, tolerance })}
      />
      <Choice
        label="Known from"
        options={BASES}
        value={figure.basis}
        onChange={(basis) => onChange({ ...figure, basis: basis as Basis })}
      />
      <TextField value={figure.source} onChange={(source) => onChange({ ...figure, source })}>
        <Label>Source</Label>
        <Input />
      </TextField>
    </div>
  );
}
