import type { MarginItem } from '../../../core/model/project.ts';
import type { NoiseSum } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';

/** What noise makes of the receiver's stated sensitivity, and what the margin keeps back for it. */
export function NoiseFacts({ noise, margin }: { noise: NoiseSum; margin: readonly MarginItem[] }) {
  const { quantity } = useFormat();
  const kept = margin.find(({ id }) => id === 'own-noise');
  return (
    <div className="stack">
      <h4 className="heading">Noise at your own receiver</h4>
      <dl className="facts">
        <dt>Stated sensitivity</dt>
        <dd>{quantity(noise.statedDbm, 'dBm', 1)}</dd>
        <dt>Line and receiver</dt>
        <dd>noise figure {quantity(noise.chainNoiseFigureDb, 'dB', 1)} at the antenna</dd>
        <dt>From outside</dt>
        <dd>
          {noise.externalDb === null
            ? 'no law covers this carrier'
            : `${quantity(noise.externalDb, 'dB', 1)} over thermal noise, the median at this place`}
        </dd>
        <dt>What it costs</dt>
        <dd>
          {quantity(noise.desenseDb, 'dB', 1)}
          {kept === undefined
            ? ''
            : noise.desenseDb <= kept.lossDb
              ? `; the margin keeps ${quantity(kept.lossDb, 'dB', 1)} back for it (${kept.label})`
              : `, more than the ${quantity(kept.lossDb, 'dB', 1)} the margin keeps back for it (${kept.label})`}
        </dd>
        <dt>Sensitivity left</dt>
        <dd>{quantity(noise.effectiveDbm, 'dBm', 1)} at the antenna</dd>
        <dt>Source</dt>
        <dd>{noise.source}</dd>
      </dl>
    </div>
  );
}
