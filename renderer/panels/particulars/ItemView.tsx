import { useState } from 'react';
import { Button } from 'react-aria-components';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { balloonNumber } from '../../../core/drawing/balloons.ts';
import { setItem, setItemEndPosition, setItemPosition, snapToPlace } from '../../../core/edit/items.ts';
import type { Part } from '../../../core/model/part.ts';
import type { Item, Project } from '../../../core/model/project.ts';
import { useAppStore } from '../../store/context.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { ItemFactFields } from './Facts.tsx';
import { NumberFields, OpenChoice, useEdit, WordChoice } from './fields.tsx';
import { ItemConnections } from './ItemConnections.tsx';
import { ItemFigures } from './ItemFigures.tsx';
import { ItemTraits } from './ItemTraits.tsx';
import { Measurements } from './Measurements.tsx';
import { PartChoice } from './PartChoice.tsx';
import { Photos } from './Photos.tsx';
import { DuplicateButton, FindingsAbout, HangsOn, RemoveButton } from './Shared.tsx';
import { POSITION_SPECS } from './StructureFields.tsx';
import { STATUSES } from './words.ts';

/** Everything about one placed part. */
export function ItemView({ project, item }: { project: Project; item: Item }) {
  const part = indexProject(project).parts.get(item.partId);
  const subject = { kind: 'item', id: item.id } as const;
  const { id, tag, overrides } = item;
  return (
    <>
      <ItemHeading project={project} item={item} part={part} />
      <ItemIdentity project={project} item={item} />
      <ItemFactFields itemId={id} tag={tag} part={part} facts={item.facts} />
      <ItemConnections project={project} itemId={id} />
      <HangsOn subject={subject} />
      <FindingsAbout subject={subject} />
      {part ? (
        <>
          <ItemFigures itemId={id} tag={tag} part={part} figures={overrides.figures} />
          <ItemTraits itemId={id} tag={tag} part={part} traits={overrides.traits} />
        </>
      ) : null}
      <Measurements project={project} subject={subject} name={tag} />
      <Photos project={project} subject={subject} name={tag} />
      <ItemNotes item={item} />
      <ItemTools item={item} hasPorts={part !== undefined && part.ports.length > 0} />
    </>
  );
}

function ItemHeading({ project, item, part }: { project: Project; item: Item; part: Part | undefined }) {
  const [isChanging, setIsChanging] = useState(false);
  return (
    <header className="stack">
      <div className="particulars-title">
        <span className="balloon" title="Number of its balloon on the drawing">
          {balloonNumber(project, item.id)}
        </span>
        <h2 className="title">
          {item.tag} <span className="particulars-part">{part?.name ?? 'Unknown part'}</span>
        </h2>
      </div>
      <p className="small soft">
        {part
          ? part.description
          : `This program does not know the part "${item.partId}": nothing is computed for it. Choose a known one.`}
      </p>
      {isChanging ? (
        <PartChoice project={project} item={item} kind={part?.kind} close={() => setIsChanging(false)} />
      ) : (
        <Button className="button link small start" onPress={() => setIsChanging(true)}>
          Take another part for it…
        </Button>
      )}
    </header>
  );
}

function ItemIdentity({ project, item }: { project: Project; item: Item }) {
  const edit = useEdit();
  const { id, tag } = item;
  const places = Object.fromEntries(project.places.map((place) => [place.id, place.name]));
  return (
    <section className="panel-section" aria-label="Name and place">
      <div className="particulars-fields particulars-fields--three">
        <TextRow
          label="Tag"
          value={tag}
          isRequired
          onCommit={(text) => edit(`${tag} is now ${text}`, (before) => setItem(before, id, { tag: text }))}
        />
        <TextRow
          label="Name"
          value={item.name}
          onCommit={(name) => edit(`${tag}: name changed`, (before) => setItem(before, id, { name }))}
        />
        <WordChoice
          label="Status"
          words={STATUSES}
          value={item.status}
          onChange={(status) => edit(`${tag}: status changed`, (before) => setItem(before, id, { status }))}
        />
      </div>
      <OpenChoice
        label="Place"
        words={places}
        value={item.placeId ?? undefined}
        open="Standing free"
        onChange={(placeId) =>
          placeId === undefined
            ? edit(`${tag} stands free`, (before) => setItem(before, id, { placeId: null }))
            : edit(`${tag} put at ${places[placeId]}`, (before) => snapToPlace(before, id, placeId))
        }
      />
      <div className="particulars-fields particulars-fields--three">
        <NumberFields
          specs={POSITION_SPECS}
          values={item.position}
          onCommit={(key, value) =>
            edit(`${tag} moved`, (before) => setItemPosition(before, id, { ...item.position, [key]: value }))
          }
        />
      </div>
      <WireEnd project={project} item={item} />
    </section>
  );
}

/** The other end of a wire antenna. */
function WireEnd({ project, item }: { project: Project; item: Item }) {
  const edit = useEdit();
  const part = indexProject(project).parts.get(item.partId);
  const { endPosition, id, tag, position } = item;
  const isWire = part?.kind === 'antenna' && part.antennaClass === 'hf-wire';
  if (endPosition === null && !isWire) return null;
  if (endPosition === null) {
    return (
      <Button
        className="button start"
        onPress={() =>
          edit(`${tag}: upper end set`, (before) =>
            setItemEndPosition(before, id, { ...position, zM: position.zM + 5 }),
          )
        }
      >
        Give the wire an upper end
      </Button>
    );
  }
  return (
    <fieldset className="particulars-group">
      <legend className="label">Upper end of the wire</legend>
      <div className="particulars-fields particulars-fields--three">
        <NumberFields
          specs={POSITION_SPECS}
          values={endPosition}
          onCommit={(key, value) =>
            edit(`${tag}: upper end moved`, (before) =>
              setItemEndPosition(before, id, { ...endPosition, [key]: value }),
            )
          }
        />
      </div>
    </fieldset>
  );
}

function ItemNotes({ item }: { item: Item }) {
  const edit = useEdit();
  return (
    <section className="panel-section" aria-label="Notes">
      <TextRow
        label="Notes"
        value={item.notes}
        isLong
        onCommit={(notes) => edit(`${item.tag}: notes changed`, (project) => setItem(project, item.id, { notes }))}
      />
    </section>
  );
}

function ItemTools({ item, hasPorts }: { item: Item; hasPorts: boolean }) {
  const store = useAppStore();
  return (
    <section className="panel-section" aria-label="Tools">
      <div className="row">
        {hasPorts ? (
          <Button className="button" onPress={() => store.getState().setView({ dialog: 'connect' })}>
            Connect…
          </Button>
        ) : null}
        <DuplicateButton />
        <RemoveButton subject={{ kind: 'item', id: item.id }} name={item.tag} />
      </div>
    </section>
  );
}
