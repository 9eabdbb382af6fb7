import { memo, useState } from 'react';
import { Button } from 'react-aria-components';
import { resetItemFigure, setItemFigure } from '../../../core/edit/figures.ts';
import type { Figure } from '../../../core/model/figure.ts';
import type { Part } from '../../../core/model/part.ts';
import { figureRange } from '../../../core/model/ranges.ts';
import { figureWords } from '../../ui/figureWords.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { useEdit, WordChoice } from './fields.tsx';
import { decimalsOf, figureChange, figuresNotGiven } from './reckon.ts';
import { BASES } from './words.ts';

type Figures = Readonly<Record<string, Figure>>;

/** Every figure of the part as it counts for this item: value, tolerance, how it is known and where from. */
export const ItemFigures = memo(function ItemFigures({
  itemId,
  tag,
  part,
  figures,
}: {
  itemId: string;
  tag: string;
  part: Part;
  figures: Figures;
}) {
  const given: Readonly<Record<string, Figure | undefined>> = { ...part.figures, ...figures };
  const entries = Object.entries(given).flatMap(([key, known]) => (known ? [{ key, known }] : []));
  const open = figuresNotGiven(part).filter((key) => !given[key]);
  if (entries.length === 0 && open.length === 0) return null;
  return (
    <section className="panel-section" aria-label="Figures">
      <h3 className="heading">Figures</h3>
      {entries.map(({ key, known }) => (
        <FigureRow
          key={key}
          itemId={itemId}
          tag={tag}
          figureKey={key}
          known={known}
          isOwn={Object.hasOwn(figures, key)}
        />
      ))}
      {open.map((key) => (
        <OpenFigure key={key} itemId={itemId} tag={tag} figureKey={key} part={part} />
      ))}
    </section>
  );
});

function FigureRow({
  itemId,
  tag,
  figureKey,
  known,
  isOwn,
}: {
  itemId: string;
  tag: string;
  figureKey: string;
  known: Figure;
  isOwn: boolean;
}) {
  const edit = useEdit();
  const { name, unit, digits } = figureWords(figureKey);
  const label = `${tag}: ${name.toLowerCase()} changed`;
  const change = (what: Partial<Figure>): boolean =>
    edit(label, (project) => setItemFigure(project, itemId, figureKey, figureChange(known, isOwn, what)));
  const { min, max } = figureRange(figureKey);
  return (
    <fieldset className={`figure-row${isOwn ? ' is-own' : ''}`} aria-label={name}>
      <div className="figure-fields">
        <QuantityField
          label={name}
          value={known.value}
          unit={unit}
          digits={decimalsOf(known.value, unit, digits)}
          min={min}
          max={max}
          onCommit={(value) => value !== null && change({ value })}
        />
        <QuantityField
          label="Give or take"
          value={known.tolerance}
          unit={unit}
          digits={decimalsOf(known.tolerance, unit, digits)}
          min={0}
          max={max - min}
          onCommit={(tolerance) => tolerance !== null && change({ tolerance })}
        />
        <WordChoice label="How known" words={BASES} value={known.basis} onChange={(basis) => change({ basis })} />
      </div>
      <SourceLine source={known.source} onCommit={(source) => change({ source })} />
      {isOwn ? <OwnMark itemId={itemId} tag={tag} figureKey={figureKey} name={name} /> : null}
    </fieldset>
  );
}

/** That a figure is not the catalogue's, and the way back. */
function OwnMark({ itemId, tag, figureKey, name }: { itemId: string; tag: string; figureKey: string; name: string }) {
  const edit = useEdit();
  const reset = (): void => {
    edit(`${tag}: ${name.toLowerCase()} back to catalogue`, (project) => resetItemFigure(project, itemId, figureKey));
  };
  return (
    <div className="row-between">
      <span className="chip">own value of {tag}</span>
      <Button className="button link small" onPress={reset}>
        Back to catalogue
      </Button>
    </div>
  );
}

/** The source as a sentence to read, and as a field only while it is being written. */
function SourceLine({ source, onCommit }: { source: string; onCommit: (source: string) => void }) {
  const [isOpen, setIsOpen] = useState(false);
  if (isOpen) {
    return (
      <div className="stack">
        <TextRow
          label="Source"
          value={source}
          isLong
          onCommit={(text) => {
            setIsOpen(false);
            onCommit(text);
          }}
        />
        <Button className="button link small start" onPress={() => setIsOpen(false)}>
          Close
        </Button>
      </div>
    );
  }
  return (
    <p className="small soft">
      {source === '' ? 'No source given' : source}{' '}
      <Button className="button link small" aria-label="Edit the source" onPress={() => setIsOpen(true)}>
        Edit
      </Button>
    </p>
  );
}

/** A figure the part does not give, or gives as a table: empty until the item has its own. */
function OpenFigure({ itemId, tag, figureKey, part }: { itemId: string; tag: string; figureKey: string; part: Part }) {
  const edit = useEdit();
  const { quantity } = useFormat();
  const table = part.kind === 'inline' ? part.lossTables[figureKey] : undefined;
  const words = table ? { name: 'Loss, own value', unit: 'dB' as const, digits: 2 } : figureWords(figureKey);
  const rows = table?.rows.map(
    ({ frequencyMhz, lossDb }) => `${quantity(lossDb, 'dB')} at ${quantity(frequencyMhz, 'MHz', 0)}`,
  );
  return (
    <div className="figure-row">
      <div className="figure-fields">
        <QuantityField
          label={words.name}
          value={null}
          unit={words.unit}
          digits={words.digits}
          {...(table ? { min: 0, max: 200 } : figureRange(figureKey))}
          isOptional
          onCommit={(value) =>
            value !== null &&
            edit(`${tag}: ${words.name.toLowerCase()} set`, (project) =>
              setItemFigure(project, itemId, figureKey, { value }),
            )
          }
        />
      </div>
      <p className="small soft">
        {table && rows
          ? `While empty, from its table (${BASES[table.basis]}): ${rows.join(', ')}. ${table.source}`
          : 'Not given for this part.'}
      </p>
    </div>
  );
}
