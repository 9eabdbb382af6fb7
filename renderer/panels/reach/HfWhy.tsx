import type { HfBand, HfResult } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';
import { efficiencySteps } from './hfWhy.ts';

/** The chain behind one band's efficiency, as a row of its table. */
export function HfWhy({ result, band, columns }: { result: HfResult; band: HfBand; columns: number }) {
  const { rich } = useFormat();
  return (
    <tr className="why-row">
      <td colSpan={columns}>
        <dl className="facts">
          {efficiencySteps(result, band).map(({ name, sum, source }) => (
            <div key={name} className="facts-row">
              <dt>{name}</dt>
              <dd>
                {rich(sum)}
                <span className="basis">{source}</span>
              </dd>
            </div>
          ))}
        </dl>
      </td>
    </tr>
  );
}
