import { useMemo, useState } from 'react';
import { Form, Input, Label, TextField } from 'react-aria-components';
import { PALETTES } from '../../core/drawing/palette.ts';
import { drawProfile } from '../../core/drawing/profile.ts';
import { fitProjection } from '../../core/drawing/projection.ts';
import type { BoatKind } from '../../core/model/boat.ts';
import { boatSchema } from '../../core/model/boat.ts';
import { MAX_NEW_MASTS, type NewProjectInput, newProject } from '../../core/model/defaults.ts';
import type { Project } from '../../core/model/project.ts';
import { DialogActions } from '../app/AppDialog.tsx';
import { Choice } from '../app/Choice.tsx';
import { newBoat } from '../app/openActions.ts';
import { useThemeName } from '../app/useTheme.ts';
import { SvgDrawing } from '../canvas/SvgDrawing.tsx';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { QuantityField } from '../ui/QuantityField.tsx';
import { DialogFrame, type DialogProps } from './DialogFrame.tsx';
import './dialogs.css';

const KINDS: readonly { readonly id: BoatKind; readonly name: string }[] = [
  { id: 'sloop', name: 'Sloop' },
  { id: 'cutter', name: 'Cutter' },
  { id: 'ketch', name: 'Ketch' },
  { id: 'schooner', name: 'Schooner' },
  { id: 'catamaran', name: 'Catamaran' },
  { id: 'motor-yacht', name: 'Motor yacht' },
  { id: 'trawler', name: 'Trawler' },
  { id: 'open-boat', name: 'Open boat' },
];

const START: NewProjectInput = {
  name: '',
  kind: 'sloop',
  loaM: 11,
  beamM: 3.6,
  draughtM: 1.9,
  airDraughtM: 16.5,
  freeboardM: 1.1,
};

const NUMBERS = [
  ['loaM', 'Length over all', boatSchema.shape.loaM],
  ['beamM', 'Beam', boatSchema.shape.beamM],
  ['draughtM', 'Draught', boatSchema.shape.draughtM],
  ['airDraughtM', 'Air draught', boatSchema.shape.airDraughtM],
  ['freeboardM', 'Freeboard amidships', boatSchema.shape.freeboardMidM],
] as const;

const MAST_COUNTS = [
  { id: 'usual', name: 'As usual for the kind' },
  ...Array.from({ length: MAX_NEW_MASTS + 1 }, (_, count) => ({ id: String(count), name: String(count) })),
];

/** A new boat from its kind and a handful of numbers, drawn while they are typed. */
export function NewBoatDialog(props: DialogProps) {
  return (
    <DialogFrame {...props} title="New boat">
      {(close) => <NewBoat close={close} />}
    </DialogFrame>
  );
}

function NewBoat({ close }: { close: () => void }) {
  const store = useAppStore();
  const host = useHost();
  const [input, setInput] = useState(START);
  const made = useMemo(() => tried(input), [input]);
  const make = async (project: Project): Promise<void> => {
    // Who keeps the document that is open keeps what was typed here as well.
    if (await newBoat(store, host, project)) close();
  };
  return (
    <Form
      onSubmit={(event) => {
        event.preventDefault();
        if (made.project) void make(made.project);
      }}
    >
      <div className="dialog-body new-boat">
        <div className="stack">
          <Fields input={input} onChange={setInput} />
        </div>
        <figure className="new-boat-view">
          {made.project ? <Preview project={made.project} /> : <p className="empty">{made.problem}</p>}
          <figcaption className="small soft">
            Masts, deckhouse, compartments and places follow from these numbers by usual proportions. Everything can be
            corrected afterwards under Particulars.
          </figcaption>
        </figure>
      </div>
      <DialogActions close={close} name="Make the boat" isEnabled={made.project !== null} />
    </Form>
  );
}

function Fields({ input, onChange }: { input: NewProjectInput; onChange: (input: NewProjectInput) => void }) {
  return (
    <>
      <TextField value={input.name} onChange={(name) => onChange({ ...input, name })} autoFocus>
        <Label>Name</Label>
        <Input />
      </TextField>
      <Choice
        label="Kind"
        options={KINDS}
        value={input.kind}
        onChange={(kind) => onChange({ ...input, kind: kind as BoatKind })}
      />
      {NUMBERS.map(([key, label, schema]) => (
        <QuantityField
          key={key}
          label={label}
          value={input[key]}
          unit="m"
          digits={2}
          isLive
          min={schema.minValue ?? 0}
          max={schema.maxValue ?? 100}
          onCommit={(value) => value !== null && onChange({ ...input, [key]: value })}
        />
      ))}
      <Choice
        label="Masts"
        options={MAST_COUNTS}
        value={input.mastCount === undefined ? 'usual' : String(input.mastCount)}
        onChange={(count) => onChange(withMasts(input, count))}
      />
    </>
  );
}

function withMasts({ mastCount: _before, ...rest }: NewProjectInput, count: string): NewProjectInput {
  return count === 'usual' ? rest : { ...rest, mastCount: Number(count) };
}

function tried(input: NewProjectInput): { project: Project | null; problem: string } {
  try {
    return { project: newProject({ ...input, name: input.name.trim() || 'New boat' }), problem: '' };
  } catch (error) {
    if (error instanceof RangeError) return { project: null, problem: error.message };
    throw error;
  }
}

function Preview({ project }: { project: Project }) {
  const theme = useThemeName();
  const preferences = useApp((state) => state.preferences);
  const size = { width: 420, height: 420 };
  const drawing = drawProfile(
    project,
    { paths: [], findings: [] },
    {
      ...size,
      projection: fitProjection(project, size.width, size.height, 16),
      textSize: 9,
      preferences,
      show: {
        grid: true,
        boat: true,
        labels: false,
        balloons: false,
        findingMarks: false,
        feeds: false,
        links: false,
        places: false,
      },
    },
  );
  return <SvgDrawing drawing={drawing} palette={PALETTES[theme]} label="The boat as drawn" />;
}
