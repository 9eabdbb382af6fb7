import type { DistanceBand, RangeResult } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';

/** The three distances of one range, large, each with its band; what they were upright stays beside them. */
export function ThreeNumbers({ upright, tried }: { upright: RangeResult; tried: RangeResult }) {
  const { quantity } = useFormat();
  const { dependable, typical } = tried;
  const isChanged = tried !== upright;
  return (
    <dl className="three">
      <Distance name="Dependable" band={dependable} wasKm={isChanged ? upright.dependable.nominalKm : null} isMain />
      <Distance name="Typical" band={typical} wasKm={isChanged ? upright.typical.nominalKm : null} />
      <div>
        <dt>Horizon</dt>
        <dd className="three-value">{quantity(tried.horizonKm, 'km')}</dd>
        <dd className="three-band">a landmark</dd>
      </div>
    </dl>
  );
}

function Distance({
  name,
  band,
  wasKm,
  isMain = false,
}: {
  name: string;
  band: DistanceBand;
  wasKm: number | null;
  isMain?: boolean;
}) {
  const { quantity } = useFormat();
  return (
    <div className={isMain ? 'three-main' : ''}>
      <dt>{name}</dt>
      <dd className="three-value">{quantity(band.nominalKm, 'km')}</dd>
      <dd className="three-band">
        {quantity(band.lowKm, 'km')} to {quantity(band.highKm, 'km')}
      </dd>
      {wasKm === null ? null : <dd className="three-band">upright {quantity(wasKm, 'km')}</dd>}
    </div>
  );
}
