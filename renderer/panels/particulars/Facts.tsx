import { memo } from 'react';
import { setItem } from '../../../core/edit/items.ts';
import { setRun } from '../../../core/edit/runs.ts';
import type { Part } from '../../../core/model/part.ts';
import type { ItemFacts, RunFacts } from '../../../core/model/project.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { type FactSpec, ITEM_FACTS, itemFactKeys, RUN_FACT_KEYS, RUN_FACTS } from './facts.ts';
import { OpenChoice, useEdit } from './fields.tsx';

type FactValue = string | number | boolean | undefined;

/** Facts about an item as found; whatever was not looked at stays "not known". */
export const ItemFactFields = memo(function ItemFactFields({
  itemId,
  tag,
  part,
  facts,
}: {
  itemId: string;
  tag: string;
  part: Part | undefined;
  facts: ItemFacts;
}) {
  const edit = useEdit();
  const keys = itemFactKeys(part, facts);
  if (keys.length === 0) return null;
  return (
    <section className="panel-section" aria-label="As found">
      <h3 className="heading">As found</h3>
      <div className="particulars-fields particulars-fields--wide">
        {keys.map((key) => (
          <FactField
            key={key}
            spec={ITEM_FACTS[key]}
            value={facts[key]}
            {...(key === 'overhead' || key === 'outdoors' ? { open: 'As its place has it' } : {})}
            onChange={(value) =>
              edit(`${tag}: ${ITEM_FACTS[key].label.toLowerCase()} noted`, (project) =>
                // The schema of the facts checks the value; a wrong one is refused with its reason.
                setItem(project, itemId, { facts: { [key]: value } }),
              )
            }
          />
        ))}
      </div>
    </section>
  );
});

/** Facts about a run as found. */
export const RunFactFields = memo(function RunFactFields({
  runId,
  number,
  facts,
}: {
  runId: string;
  number: string;
  facts: RunFacts;
}) {
  const edit = useEdit();
  return (
    <section className="panel-section" aria-label="As found">
      <h3 className="heading">As found</h3>
      <div className="particulars-fields particulars-fields--wide">
        {RUN_FACT_KEYS.map((key) => (
          <FactField
            key={key}
            spec={RUN_FACTS[key]}
            value={facts[key]}
            onChange={(value) =>
              edit(`${number}: ${RUN_FACTS[key].label.toLowerCase()} noted`, (project) =>
                setRun(project, runId, { facts: { [key]: value } }),
              )
            }
          />
        ))}
      </div>
    </section>
  );
});

function FactField({
  spec,
  value,
  open = 'Not known',
  onChange,
}: {
  spec: FactSpec;
  value: FactValue;
  open?: string;
  onChange: (value: FactValue) => void;
}) {
  switch (spec.type) {
    case 'yes-no':
      return (
        <OpenChoice
          label={spec.label}
          open={open}
          words={{ yes: spec.yes ?? 'Yes', no: spec.no ?? 'No' }}
          value={value === undefined ? undefined : value === true ? 'yes' : 'no'}
          onChange={(key) => onChange(key === undefined ? undefined : key === 'yes')}
        />
      );
    case 'choice':
      return (
        <OpenChoice
          label={spec.label}
          words={spec.words}
          value={typeof value === 'string' ? value : undefined}
          open={open}
          onChange={onChange}
        />
      );
    case 'number':
      return (
        <QuantityField
          label={spec.label}
          value={typeof value === 'number' ? value : null}
          unit={spec.unit}
          digits={spec.digits}
          min={spec.min}
          max={spec.max}
          isOptional
          onCommit={(stored) => onChange(stored ?? undefined)}
        />
      );
    case 'text':
      return (
        <TextRow
          label={spec.label}
          value={typeof value === 'string' ? value : ''}
          onCommit={(text) => onChange(text === '' ? undefined : text)}
        />
      );
  }
}
