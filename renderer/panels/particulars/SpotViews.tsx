import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { Compartment, Fitting, Mast, Place } from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';
import { itemName } from '../../../core/report/words.ts';
import { Jump } from './fields.tsx';
import { FindingsAbout, HangsOn, RemoveButton } from './Shared.tsx';
import { CompartmentFields, FittingFields, MastFields, PlaceFields } from './StructureFields.tsx';
import { FITTING_KINDS } from './words.ts';

/** A named spot: where it is, what is over it and what stands there. */
export function PlaceView({ project, place }: { project: Project; place: Place }) {
  const subject = { kind: 'place', id: place.id } as const;
  const standing = project.items.filter(({ placeId }) => placeId === place.id);
  const through = project.runs.filter(({ via }) => via.some(({ placeId }) => placeId === place.id));
  return (
    <>
      <SpotHeading name={place.name} kind="place" />
      <section className="panel-section" aria-label="Place">
        <PlaceFields project={project} place={place} />
      </section>
      <section className="panel-section" aria-label="What stands here">
        <h3 className="heading">What stands here</h3>
        {standing.length === 0 ? (
          <p className="small soft">Nothing. Drag a part here, or choose this place under Place of an item.</p>
        ) : null}
        <ul className="plain-list">
          {standing.map((item) => (
            <li key={item.id} className="small">
              <Jump subject={{ kind: 'item', id: item.id }}>{item.tag}</Jump> {itemName(project, item)}
            </li>
          ))}
          {through.map((run) => (
            <li key={run.id} className="small">
              <Jump subject={{ kind: 'run', id: run.id }}>{run.number}</Jump>{' '}
              {indexProject(project).parts.get(run.cableId)?.name ?? 'unknown cable'} passes through
            </li>
          ))}
        </ul>
      </section>
      <FindingsAbout subject={subject} />
      <section className="panel-section" aria-label="Tools">
        <div className="row">
          <RemoveButton subject={subject} name={place.name} />
        </div>
      </section>
    </>
  );
}

/** A mast or another fixed structure, and what goes with it. */
export function StructureView({ project, structure }: { project: Project; structure: Mast | Fitting }) {
  const subject = { kind: 'structure', id: structure.id } as const;
  const places = project.places.filter(({ structureId }) => structureId === structure.id);
  const isFitting = 'kind' in structure;
  return (
    <>
      <SpotHeading name={structure.name} kind={isFitting ? FITTING_KINDS[structure.kind].toLowerCase() : 'mast'} />
      <section className="panel-section" aria-label="Structure">
        {isFitting ? <FittingFields fitting={structure} /> : <MastFields mast={structure} />}
      </section>
      <PlacesThere title="Places on it" places={places} project={project} />
      <HangsOn subject={subject} />
      <FindingsAbout subject={subject} />
      <section className="panel-section" aria-label="Tools">
        <div className="row">
          <RemoveButton subject={subject} name={structure.name} />
        </div>
      </section>
    </>
  );
}

/** A space below, and what is in it. */
export function CompartmentView({ project, compartment }: { project: Project; compartment: Compartment }) {
  const subject = { kind: 'compartment', id: compartment.id } as const;
  const places = project.places.filter(({ compartmentId }) => compartmentId === compartment.id);
  return (
    <>
      <SpotHeading name={compartment.name} kind="compartment" />
      <section className="panel-section" aria-label="Compartment">
        <CompartmentFields compartment={compartment} />
      </section>
      <PlacesThere title="Places in it" places={places} project={project} />
      <FindingsAbout subject={subject} />
      <section className="panel-section" aria-label="Tools">
        <div className="row">
          <RemoveButton subject={subject} name={compartment.name} />
        </div>
      </section>
    </>
  );
}

function SpotHeading({ name, kind }: { name: string; kind: string }) {
  return (
    <header>
      <h2 className="title">
        {name} {kind === name.toLowerCase() ? null : <span className="particulars-part">{kind}</span>}
      </h2>
    </header>
  );
}

function PlacesThere({ title, places, project }: { title: string; places: readonly Place[]; project: Project }) {
  return (
    <section className="panel-section" aria-label={title}>
      <h3 className="heading">{title}</h3>
      {places.length === 0 ? <p className="small soft">None.</p> : null}
      <ul className="plain-list">
        {places.map((place) => {
          const tags = project.items.filter(({ placeId }) => placeId === place.id).map(({ tag }) => tag);
          return (
            <li key={place.id} className="small">
              <Jump subject={{ kind: 'place', id: place.id }}>{place.name}</Jump>
              {tags.length === 0 ? null : `: ${tags.join(', ')}`}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
