import { setCompartment, setFitting, setMast } from '../../../core/edit/boat.ts';
import { setPlace } from '../../../core/edit/places.ts';
import {
  type Compartment,
  compartmentSchema,
  deckhouseSchema,
  type Fitting,
  fittingSchema,
  type Mast,
  mastSchema,
  type Place,
  positionSchema,
} from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { NumberFields, numberSpec, OpenChoice, Tick, useEdit, WordChoice } from './fields.tsx';
import { SpreaderField } from './SpreaderField.tsx';
import { FITTING_KINDS, MATERIALS, OVERHEADS, SIDES, STEPPED } from './words.ts';

export const POSITION_SPECS = [
  numberSpec('xM', 'x, aft of the stem', positionSchema.shape.xM),
  numberSpec('yM', 'y, to port', positionSchema.shape.yM),
  numberSpec('zM', 'z, above the water', positionSchema.shape.zM),
] as const;

const spanSpecs = (shape: typeof deckhouseSchema.shape | typeof fittingSchema.shape | typeof compartmentSchema.shape) =>
  [numberSpec('xForeM', 'Forward end, x', shape.xForeM), numberSpec('xAftM', 'After end, x', shape.xAftM)] as const;

export const DECKHOUSE_SPECS = [
  ...spanSpecs(deckhouseSchema.shape),
  numberSpec('zTopM', 'Top above the water', deckhouseSchema.shape.zTopM),
] as const;

const MAST_SPECS = [
  numberSpec('xM', 'x, aft of the stem', mastSchema.shape.xM),
  numberSpec('footZM', 'Foot above the water', mastSchema.shape.footZM),
  numberSpec('truckZM', 'Truck above the water', mastSchema.shape.truckZM),
  { key: 'sectionMm', label: 'Section, fore and aft', unit: 'mm', digits: 0, min: 1, max: 2000 },
  { key: 'boomLengthM', label: 'Boom length', unit: 'm', digits: 2, min: 0, max: 60 },
] as const;

const FITTING_SPECS = [
  ...spanSpecs(fittingSchema.shape),
  numberSpec('zBaseM', 'Base above the water', fittingSchema.shape.zBaseM),
  numberSpec('zTopM', 'Top above the water', fittingSchema.shape.zTopM),
] as const;

const COMPARTMENT_SPECS = [
  ...spanSpecs(compartmentSchema.shape),
  numberSpec('soleZM', 'Sole, above (−below) water', compartmentSchema.shape.soleZM),
] as const;

/** A mast; what stands on it goes with it. */
export function MastFields({ mast }: { mast: Mast }) {
  const edit = useEdit();
  const change = (what: string, values: Partial<Omit<Mast, 'id'>>): boolean =>
    edit(`${mast.name}: ${what}`, (project) => setMast(project, mast.id, values));
  return (
    <>
      <TextRow label="Name" value={mast.name} isRequired onCommit={(name) => change('renamed', { name })} />
      <div className="particulars-fields">
        <NumberFields
          specs={MAST_SPECS}
          values={mast}
          onCommit={(key, value, label) => change(`${label.toLowerCase()} changed`, { [key]: value })}
        />
        <WordChoice
          label="Material"
          words={MATERIALS}
          value={mast.material}
          onChange={(material) => change('material changed', { material })}
        />
        <WordChoice
          label="Stepped"
          words={STEPPED}
          value={mast.stepped}
          onChange={(stepped) => change('step changed', { stepped })}
        />
      </div>
      <SpreaderField mast={mast} onChange={change} />
    </>
  );
}

/** An arch, pulpit, wheelhouse or other fixed structure. */
export function FittingFields({ fitting }: { fitting: Fitting }) {
  const edit = useEdit();
  const change = (what: string, values: Partial<Omit<Fitting, 'id'>>): boolean =>
    edit(`${fitting.name}: ${what}`, (project) => setFitting(project, fitting.id, values));
  return (
    <>
      <TextRow label="Name" value={fitting.name} isRequired onCommit={(name) => change('renamed', { name })} />
      <div className="particulars-fields">
        <WordChoice
          label="Kind"
          words={FITTING_KINDS}
          value={fitting.kind}
          onChange={(kind) => change('kind changed', { kind })}
        />
        <WordChoice
          label="Material"
          words={MATERIALS}
          value={fitting.material}
          onChange={(material) => change('material changed', { material })}
        />
        <NumberFields
          specs={FITTING_SPECS}
          values={fitting}
          onCommit={(key, value, label) => change(`${label.toLowerCase()} changed`, { [key]: value })}
        />
      </div>
    </>
  );
}

/** A space below; its sole decides when the water reaches what stands in it. */
export function CompartmentFields({ compartment }: { compartment: Compartment }) {
  const edit = useEdit();
  const change = (what: string, values: Partial<Omit<Compartment, 'id'>>): boolean =>
    edit(`${compartment.name}: ${what}`, (project) => setCompartment(project, compartment.id, values));
  return (
    <>
      <TextRow label="Name" value={compartment.name} isRequired onCommit={(name) => change('renamed', { name })} />
      <div className="particulars-fields">
        <WordChoice
          label="Side"
          words={SIDES}
          value={compartment.side}
          onChange={(side) => change('side changed', { side })}
        />
        <NumberFields
          specs={COMPARTMENT_SPECS}
          values={compartment}
          onCommit={(key, value, label) => change(`${label.toLowerCase()} changed`, { [key]: value })}
        />
      </div>
    </>
  );
}

/** A named spot; what stands there, and cables led through it, move with it. */
export function PlaceFields({ project, place }: { project: Project; place: Place }) {
  const edit = useEdit();
  const { masts, fittings, compartments } = project.boat;
  const change = (what: string, values: Partial<Omit<Place, 'id'>>): boolean =>
    edit(`${place.name}: ${what}`, (before) => setPlace(before, place.id, values));
  return (
    <>
      <TextRow label="Name" value={place.name} isRequired onCommit={(name) => change('renamed', { name })} />
      <div className="particulars-fields particulars-fields--three">
        <NumberFields
          specs={POSITION_SPECS}
          values={place.position}
          onCommit={(key, value) => change('moved', { position: { ...place.position, [key]: value } })}
        />
      </div>
      <div className="particulars-fields">
        <OpenChoice
          label="On"
          words={namesOf([...masts, ...fittings])}
          value={place.structureId ?? undefined}
          open="The hull or deck"
          onChange={(structureId) => change('put on another structure', { structureId: structureId ?? null })}
        />
        <OpenChoice
          label="Compartment"
          words={namesOf(compartments)}
          value={place.compartmentId ?? undefined}
          open="None"
          onChange={(id) => change('put in another compartment', { compartmentId: id ?? null })}
        />
        <WordChoice
          label="Overhead"
          words={OVERHEADS}
          value={place.overhead}
          onChange={(overhead) => change('overhead changed', { overhead })}
        />
        <Tick
          label="Outdoors"
          isTicked={place.outdoors}
          onChange={(outdoors) => change(outdoors ? 'outdoors' : 'under cover', { outdoors })}
        />
      </div>
    </>
  );
}

const namesOf = (list: readonly { readonly id: string; readonly name: string }[]): Record<string, string> =>
  Object.fromEntries(list.map(({ id, name }) => [id, name]));
