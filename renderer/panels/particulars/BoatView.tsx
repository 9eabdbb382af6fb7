import { setBoat } from '../../../core/edit/boat.ts';
import { setParticulars } from '../../../core/edit/particulars.ts';
import { type Boat, boatSchema } from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { BoatLists } from './BoatLists.tsx';
import { NumberFields, numberSpec, useEdit, WordChoice } from './fields.tsx';
import { UnderlaySection } from './UnderlaySection.tsx';
import { BOAT_KINDS, MATERIALS } from './words.ts';

const { shape } = boatSchema;
const SPECS = [
  numberSpec('loaM', 'Length over all', shape.loaM),
  numberSpec('lwlM', 'Waterline length', shape.lwlM),
  numberSpec('beamM', 'Beam', shape.beamM),
  numberSpec('draughtM', 'Draught', shape.draughtM),
  numberSpec('airDraughtM', 'Air draught', shape.airDraughtM),
  numberSpec('freeboardForeM', 'Freeboard, bow', shape.freeboardForeM),
  numberSpec('freeboardMidM', 'Freeboard, amidships', shape.freeboardMidM),
  numberSpec('freeboardAftM', 'Freeboard, stern', shape.freeboardAftM),
  numberSpec('speedKn', 'Speed', shape.speedKn.unwrap(), 'kn', 1),
] as const;

/** The boat and the title block: what is shown while nothing is selected. */
export function BoatView({ project }: { project: Project }) {
  return (
    <>
      <header>
        <h2 className="title">{project.boat.name}</h2>
        <p className="small soft">
          Nothing is selected, so this is the boat herself. Select a part or a cable on the drawing for its particulars.
        </p>
      </header>
      <BoatFields boat={project.boat} />
      <UnderlaySection project={project} />
      <TitleBlock project={project} />
      <BoatLists project={project} />
    </>
  );
}

function BoatFields({ boat }: { boat: Boat }) {
  const edit = useEdit();
  const change = (what: string, values: Partial<Omit<Boat, 'masts' | 'fittings' | 'compartments'>>): boolean =>
    edit(`Boat: ${what}`, (project) => setBoat(project, values));
  return (
    <section className="panel-section" aria-label="Boat">
      <h3 className="heading">Boat</h3>
      <div className="particulars-fields particulars-fields--two">
        <TextRow label="Name" value={boat.name} isRequired onCommit={(name) => change('renamed', { name })} />
        <TextRow
          label="Home port"
          value={boat.homePort}
          onCommit={(homePort) => change('home port changed', { homePort })}
        />
      </div>
      <div className="particulars-fields">
        <WordChoice
          label="Kind"
          words={BOAT_KINDS}
          value={boat.kind}
          onChange={(kind) => change('kind changed', { kind })}
        />
        <WordChoice
          label="Hull"
          words={MATERIALS}
          value={boat.hullMaterial}
          onChange={(hullMaterial) => change('hull material changed', { hullMaterial })}
        />
        <WordChoice
          label="Deck"
          words={MATERIALS}
          value={boat.deckMaterial}
          onChange={(deckMaterial) => change('deck material changed', { deckMaterial })}
        />
        <NumberFields
          specs={SPECS}
          values={boat}
          onCommit={(key, value, label) => change(`${label.toLowerCase()} changed`, { [key]: value })}
        />
      </div>
    </section>
  );
}

function TitleBlock({ project }: { project: Project }) {
  const edit = useEdit();
  const change = (what: string, values: Parameters<typeof setParticulars>[1]): boolean =>
    edit(`${what} changed`, (before) => setParticulars(before, values));
  return (
    <section className="panel-section" aria-label="Title block">
      <h3 className="heading">Title block</h3>
      <TextRow label="Title" value={project.title} isRequired onCommit={(title) => change('Title', { title })} />
      <div className="particulars-fields particulars-fields--three">
        <TextRow
          label="Layout"
          value={project.layoutName}
          isRequired
          onCommit={(layoutName) => change('Layout name', { layoutName })}
        />
        <TextRow label="Revision" value={project.revision} onCommit={(revision) => change('Revision', { revision })} />
        <TextRow
          label="Prepared by"
          value={project.preparedBy}
          onCommit={(preparedBy) => change('Prepared by', { preparedBy })}
        />
      </div>
      <TextRow
        label="Remark on this layout"
        value={project.layoutNote ?? ''}
        isLong
        onCommit={(note) => change('Remark on the layout', { layoutNote: note === '' ? undefined : note })}
      />
      <TextRow label="Purpose" value={project.purpose} isLong onCommit={(purpose) => change('Purpose', { purpose })} />
      <TextRow label="Notes" value={project.notes} isLong onCommit={(notes) => change('Notes', { notes })} />
    </section>
  );
}
