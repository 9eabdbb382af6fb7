import { Button } from 'react-aria-components';
import { type Mast, mastSchema } from '../../../core/model/boat.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { numberSpec } from './fields.tsx';

const HEIGHT = numberSpec('zM', 'Height', mastSchema.shape.truckZM);

/** Heights of the boom and of each pair of spreaders, which a mast may have or not. */
export function SpreaderField({
  mast,
  onChange,
}: {
  mast: Mast;
  onChange: (what: string, values: Partial<Omit<Mast, 'id'>>) => void;
}) {
  const { key: _key, label: _label, ...height } = HEIGHT;
  const { spreaderZM } = mast;
  const topZM = spreaderZM.at(-1) ?? mast.footZM;
  return (
    <>
      <div className="particulars-fields">
        <QuantityField
          label="Boom above the water"
          value={mast.boomZM}
          {...height}
          isOptional
          onCommit={(boomZM) => onChange(boomZM === null ? 'boom taken off' : 'boom moved', { boomZM })}
        />
        {spreaderZM.map((zM, index) => (
          <QuantityField
            // biome-ignore lint/suspicious/noArrayIndexKey: a pair of spreaders is known by its index only
            key={index}
            label={`Spreaders ${index + 1} above the water`}
            value={zM}
            {...height}
            isOptional
            onCommit={(value) =>
              value === null
                ? onChange('spreaders taken off', { spreaderZM: spreaderZM.toSpliced(index, 1) })
                : onChange('spreaders moved', { spreaderZM: spreaderZM.with(index, value) })
            }
          />
        ))}
      </div>
      <div className="row">
        <Button
          className="button"
          onPress={() =>
            onChange('spreaders added', {
              spreaderZM: [...spreaderZM, Math.round(50 * (topZM + mast.truckZM)) / 100],
            })
          }
        >
          Add spreaders
        </Button>
        {spreaderZM.length > 0 ? <span className="small soft">Empty a height to take that pair off.</span> : null}
      </div>
    </>
  );
}
