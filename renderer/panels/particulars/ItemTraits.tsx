import { memo } from 'react';
import { Button } from 'react-aria-components';
import { resetItemTrait, setItemTrait } from '../../../core/edit/figures.ts';
import type { Part } from '../../../core/model/part.ts';
import { portWords } from '../../commands/words.ts';
import { useApp } from '../../store/context.ts';
import { shownProject } from '../../store/store.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { Tick, useEdit, WordChoice } from './fields.tsx';
import { POLARISATIONS, TRAIT_WORDS } from './words.ts';

type TraitValue = string | number | boolean | null;

/** What the part is and can do, as ticks and choices; one that differs from the catalogue can be put back. */
export const ItemTraits = memo(function ItemTraits({
  itemId,
  tag,
  part,
  traits,
}: {
  itemId: string;
  tag: string;
  part: Part;
  traits: Readonly<Record<string, unknown>>;
}) {
  const edit = useEdit();
  const entries = Object.entries({ ...part.traits, ...traits }).filter(
    ([key, value]) => !(key === 'position' && value === null),
  );
  if (entries.length === 0) return null;
  return (
    <section className="panel-section" aria-label="What it is and can do">
      <h3 className="heading">What it is and can do</h3>
      <ul className="plain-list">
        {entries.map(([key, value]) => (
          <li key={key} className="row-between">
            <TraitField
              itemId={itemId}
              part={part}
              traitKey={key}
              value={value}
              onChange={(changed) =>
                edit(`${tag}: ${(TRAIT_WORDS[key] ?? key).toLowerCase()} changed`, (project) =>
                  setItemTrait(project, itemId, key, changed),
                )
              }
            />
            {Object.hasOwn(traits, key) ? (
              <Button
                className="button link small"
                onPress={() => edit(`${tag}: back to catalogue`, (project) => resetItemTrait(project, itemId, key))}
              >
                Back to catalogue
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
});

function TraitField({
  itemId,
  part,
  traitKey,
  value,
  onChange,
}: {
  itemId: string;
  part: Part;
  traitKey: string;
  value: unknown;
  onChange: (value: TraitValue) => void;
}) {
  if (typeof value === 'boolean') {
    return <Tick label={TRAIT_WORDS[traitKey] ?? traitKey} isTicked={value} onChange={onChange} />;
  }
  if (traitKey === 'polarisation') {
    return (
      <WordChoice
        label="Polarisation"
        words={POLARISATIONS}
        value={value === 'horizontal' || value === 'circular' ? value : 'vertical'}
        onChange={onChange}
      />
    );
  }
  if (part.kind === 'inline' && typeof value === 'number') {
    return <SwitchPosition itemId={itemId} part={part} position={value} onChange={onChange} />;
  }
  return (
    <TextRow
      label={traitKey === 'tradeLabel' ? 'What the trade prints on the box' : traitKey}
      value={String(value ?? '')}
      onCommit={onChange}
    />
  );
}

/** The ways of a switch, named by the sockets they join. */
function SwitchPosition({
  itemId,
  part,
  position,
  onChange,
}: {
  itemId: string;
  part: Extract<Part, { kind: 'inline' }>;
  position: number;
  onChange: (position: number) => void;
}) {
  const project = useApp(shownProject);
  const words = Object.fromEntries(
    part.throughs.map(({ fromPortId, toPortId }, index) => {
      const [from, to] = [fromPortId, toPortId].map((portId) => portWords(project, { itemId, portId }));
      return [String(index + 1), `${index + 1}: ${from} to ${to}`];
    }),
  );
  return (
    <WordChoice
      label="Position of the switch"
      words={words}
      value={String(position)}
      onChange={(key) => onChange(Number(key))}
    />
  );
}
