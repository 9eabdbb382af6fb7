import { useState } from 'react';
import { Button } from 'react-aria-components';
import { setChance } from '../../../../core/edit/redundancy.ts';
import type { ChanceOf } from '../../../../core/redundancy/types.ts';
import { useApp, useAppStore } from '../../../store/context.ts';
import { shownProject } from '../../../store/store.ts';
import { QuantityField } from '../../../ui/QuantityField.tsx';
import { TextRow } from '../../../ui/TextRow.tsx';
import { BASIS_WORDS, useChanceText } from './chanceText.ts';

/** Where a chance comes from, and the user's own in its place. */
export function ChanceForm({ chance }: { chance: ChanceOf }) {
  const store = useAppStore();
  const { chanceText, intervalText } = useChanceText();
  const stated = useApp((state) => shownProject(state).settings.redundancy.chances[chance.id]);
  const [draft, setDraft] = useState({
    lowPercent: percentOf(chance.low),
    percent: percentOf(chance.nominal),
    highPercent: percentOf(chance.high),
    source: stated?.source ?? '',
  });
  const set = (change: Partial<typeof draft>): true => {
    setDraft({ ...draft, ...change });
    return true;
  };
  const state = (): void => {
    const source = draft.source === '' ? 'stated by the user' : draft.source;
    store
      .getState()
      .edit(`Chance of ${chance.label}`, (project) => setChance(project, chance.id, { ...draft, source }));
  };
  return (
    <div className="card chance-form" aria-live="polite">
      <h4 className="heading">{chance.label}</h4>
      <p className="small">
        {chanceText(chance.nominal)}, {intervalText(chance)} ({BASIS_WORDS[chance.basis]}: {chance.source}). Your own
        figure holds for the whole passage, whatever its length.
      </p>
      <div className="field-row">
        {(['lowPercent', 'percent', 'highPercent'] as const).map((key) => (
          <QuantityField
            key={key}
            label={LABELS[key]}
            value={draft[key]}
            unit="percent"
            digits={3}
            min={0}
            max={100}
            isLive
            onCommit={(value) => value !== null && set({ [key]: value })}
          />
        ))}
      </div>
      <TextRow label="Where your figure comes from" value={draft.source} onCommit={(source) => set({ source })} />
      <div className="row">
        <Button className="button button--primary" onPress={state}>
          Use my figure
        </Button>
        {stated ? (
          <Button
            className="button"
            onPress={() =>
              store
                .getState()
                .edit(`Chance of ${chance.label} back to the assumption`, (project) =>
                  setChance(project, chance.id, null),
                )
            }
          >
            Back to the assumption
          </Button>
        ) : null}
      </div>
    </div>
  );
}

const LABELS = { lowPercent: 'Least', percent: 'Likely', highPercent: 'Most' } as const;
const percentOf = (chance: number): number => Number((100 * chance).toPrecision(3));
