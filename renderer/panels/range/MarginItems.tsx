import { useState } from 'react';
import { Button } from 'react-aria-components';
import { setSettings } from '../../../core/edit/stations.ts';
import { marginDb } from '../../../core/model/margin.ts';
import type { MarginItem } from '../../../core/model/project.ts';
import { useAppStore } from '../../store/context.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { changedMargin, newMarginItem } from './margin.ts';
import './margin.css';

/** The real-life margin, item by item: each with its size and why, to change, take out or add to. */
export function MarginItems({ margin }: { margin: readonly MarginItem[] }) {
  const { quantity } = useFormat();
  const edit = useMarginEdit();
  return (
    <div className="margin-items">
      {margin.length === 0 ? (
        <p className="small soft">No margin is set: dependable and typical range are the same.</p>
      ) : null}
      {margin.map((item) => (
        <MarginField key={item.id} item={item} />
      ))}
      <p className="margin-total">
        <span>Together</span> <span>{quantity(marginDb(margin), 'dB', 1)}</span>
      </p>
      <Button
        className="button"
        onPress={() => edit('Margin: item added', (before) => [...before, newMarginItem(before)])}
      >
        Add an item
      </Button>
    </div>
  );
}

function useMarginEdit() {
  const store = useAppStore();
  return (label: string, change: (margin: readonly MarginItem[]) => readonly MarginItem[]): boolean =>
    store.getState().edit(label, (project) => setSettings(project, { margin: [...change(project.settings.margin)] }));
}

function MarginField({ item }: { item: MarginItem }) {
  const edit = useMarginEdit();
  const [isOpen, setOpen] = useState(false);
  const set = (change: Partial<Omit<MarginItem, 'id'>>): boolean =>
    edit(`Margin: ${item.label}`, (margin) => changedMargin(margin, item.id, change));
  return (
    <div className="margin-item">
      <QuantityField
        label={item.label}
        value={item.lossDb}
        unit="dB"
        digits={1}
        min={0}
        max={40}
        hint={item.source}
        onCommit={(lossDb) => lossDb !== null && set({ lossDb })}
      />
      <Button
        className="button link small"
        aria-label={`${isOpen ? 'Done' : 'Rename or take out'}: ${item.label}`}
        aria-expanded={isOpen}
        onPress={() => setOpen(!isOpen)}
      >
        {isOpen ? 'Done' : 'Rename or take out'}
      </Button>
      {isOpen ? (
        <div className="stack">
          <TextRow label="Name" value={item.label} isRequired onCommit={(label) => set({ label })} />
          <TextRow label="Why this size" value={item.source} onCommit={(source) => set({ source })} />
          <Button
            className="button button--danger start"
            onPress={() =>
              edit(`Margin: ${item.label} taken out`, (margin) => margin.filter(({ id }) => id !== item.id))
            }
          >
            Take {item.label} out of the margin
          </Button>
        </div>
      ) : null}
    </div>
  );
}
