import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { addCompartment, addFitting, addMast, setBoat } from '../../../core/edit/boat.ts';
import { addPlace } from '../../../core/edit/places.ts';
import type { Boat } from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';
import { Fold, Jump, NumberFields, useEdit, WordChoice } from './fields.tsx';
import { newCompartment, newDeckhouse, newFitting, newMast, newPlace } from './newOnes.ts';
import { RemoveButton } from './Shared.tsx';
import { CompartmentFields, DECKHOUSE_SPECS, FittingFields, MastFields, PlaceFields } from './StructureFields.tsx';
import { FITTING_KINDS, MATERIALS } from './words.ts';

/** What the boat is made up of: each list folded, each entry editable, with add and remove. */
export function BoatLists({ project }: { project: Project }) {
  const { boat } = project;
  return (
    <section className="panel-section" aria-label="What she is made up of">
      <h3 className="heading">What she is made up of</h3>
      <Masts boat={boat} />
      <Deckhouses boat={boat} />
      <Fittings boat={boat} />
      <Compartments boat={boat} />
      <Places project={project} />
    </section>
  );
}

function Masts({ boat }: { boat: Boat }) {
  const edit = useEdit();
  return (
    <List
      title="Masts"
      count={boat.masts.length}
      adds="Add a mast"
      onAdd={() => edit('Mast added', (before) => addMast(before, newMast(before.boat)))}
    >
      {() =>
        boat.masts.map((mast) => (
          <Entry key={mast.id} name={mast.name} subject={{ kind: 'structure', id: mast.id }}>
            {() => <MastFields mast={mast} />}
          </Entry>
        ))
      }
    </List>
  );
}

function Deckhouses({ boat: { deckhouses } }: { boat: Boat }) {
  const edit = useEdit();
  return (
    <List
      title="Deckhouses"
      count={deckhouses.length}
      adds="Add a deckhouse"
      onAdd={() =>
        edit('Deckhouse added', (before) =>
          setBoat(before, { deckhouses: [...before.boat.deckhouses, newDeckhouse(before.boat)] }),
        )
      }
    >
      {() =>
        deckhouses.map((house, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a deckhouse is known by its index only
          <Deckhouse key={index} deckhouses={deckhouses} house={house} index={index} />
        ))
      }
    </List>
  );
}

function Fittings({ boat: { fittings } }: { boat: Boat }) {
  const edit = useEdit();
  return (
    <List
      title="Fittings: arch, hardtop, pulpit …"
      count={fittings.length}
      adds="Add a fitting"
      onAdd={() => edit('Fitting added', (before) => addFitting(before, newFitting(before.boat)))}
    >
      {() =>
        fittings.map((fitting) => (
          <Entry
            key={fitting.id}
            name={fitting.name}
            note={FITTING_KINDS[fitting.kind]}
            subject={{ kind: 'structure', id: fitting.id }}
          >
            {() => <FittingFields fitting={fitting} />}
          </Entry>
        ))
      }
    </List>
  );
}

function Compartments({ boat: { compartments } }: { boat: Boat }) {
  const edit = useEdit();
  return (
    <List
      title="Compartments"
      count={compartments.length}
      adds="Add a compartment"
      onAdd={() => edit('Compartment added', (before) => addCompartment(before, newCompartment(before.boat)))}
    >
      {() =>
        compartments.map((compartment) => (
          <Entry key={compartment.id} name={compartment.name} subject={{ kind: 'compartment', id: compartment.id }}>
            {() => <CompartmentFields compartment={compartment} />}
          </Entry>
        ))
      }
    </List>
  );
}

function Places({ project }: { project: Project }) {
  const edit = useEdit();
  return (
    <List
      title="Places"
      count={project.places.length}
      adds="Add a place"
      onAdd={() => edit('Place added', (before) => addPlace(before, newPlace(before)))}
    >
      {() =>
        project.places.map((place) => (
          <Entry key={place.id} name={place.name} subject={{ kind: 'place', id: place.id }}>
            {() => <PlaceFields project={project} place={place} />}
          </Entry>
        ))
      }
    </List>
  );
}

function List({
  title,
  count,
  adds,
  onAdd,
  children,
}: {
  title: string;
  count: number;
  adds: string;
  onAdd: () => void;
  children: () => ReactNode;
}) {
  return (
    <Fold title={title} note={count === 0 ? 'none' : String(count)}>
      {() => (
        <>
          {children()}
          <Button className="button start" onPress={onAdd}>
            {adds}
          </Button>
        </>
      )}
    </Fold>
  );
}

function Entry({
  name,
  note,
  subject,
  children,
}: {
  name: string;
  note?: string;
  subject: { readonly kind: 'structure' | 'compartment' | 'place'; readonly id: string };
  children: () => ReactNode;
}) {
  return (
    <Fold title={name} {...(note === undefined || note === name ? {} : { note })}>
      {() => (
        <>
          {children()}
          <div className="row-between">
            <Jump subject={subject}>Select it, to see what stands there</Jump>
            <RemoveButton subject={subject} name={name} />
          </div>
        </>
      )}
    </Fold>
  );
}

function Deckhouse({
  deckhouses,
  house,
  index,
}: {
  deckhouses: Boat['deckhouses'];
  house: Boat['deckhouses'][number];
  index: number;
}) {
  const edit = useEdit();
  const change = (what: string, values: Partial<typeof house>): boolean =>
    edit(`Deckhouse: ${what}`, (project) =>
      setBoat(project, { deckhouses: deckhouses.with(index, { ...house, ...values }) }),
    );
  return (
    <Fold title={`Deckhouse ${index + 1}`}>
      {() => (
        <>
          <div className="particulars-fields">
            <NumberFields
              specs={DECKHOUSE_SPECS}
              values={house}
              onCommit={(key, value, label) => change(`${label.toLowerCase()} changed`, { [key]: value })}
            />
            <WordChoice
              label="Material"
              words={MATERIALS}
              value={house.material}
              onChange={(material) => change('material changed', { material })}
            />
          </div>
          <Button
            className="button button--danger start"
            onPress={() =>
              edit('Deckhouse deleted', (project) => setBoat(project, { deckhouses: deckhouses.toSpliced(index, 1) }))
            }
          >
            Delete Deckhouse {index + 1}
          </Button>
        </>
      )}
    </Fold>
  );
}
