import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import { useFormat } from '../../ui/text.ts';
import { hasFine } from './chartLayout.ts';

/** What the lines of the chart are, and the switch for the thin ones. */
export function ChartKey({
  curve,
  hasRest,
  wantsFine,
  onFine,
}: {
  curve: LevelCurve;
  hasRest: boolean;
  wantsFine: boolean;
  onFine: (wantsFine: boolean) => void;
}) {
  const { quantity } = useFormat();
  const isFine = wantsFine && hasFine(curve);
  const gives = (key: 'twoRayDbm' | 'scatterDbm'): boolean => isFine && curve.points.some((each) => each[key] !== null);
  return (
    <div className="small soft range-key chart-key">
      <span>
        <svg width={24} height={12} aria-hidden="true">
          <rect className="chart-band" x={0} y={0} width={24} height={12} />
          <path className="chart-curve" d="M0 6H24" />
        </svg>{' '}
        level ± {quantity(curve.bandDb, 'dB', 1)}
      </span>
      {hasRest ? <Line kind="rest" name="upright" /> : null}
      {gives('twoRayDbm') ? <Line kind="fine" name="with the sea’s reflection" /> : null}
      {gives('scatterDbm') ? <Line kind="scatter" name="with scatter, a good day" /> : null}
      {hasFine(curve) ? (
        <label className="chart-switch">
          <input type="checkbox" checked={wantsFine} onChange={(event) => onFine(event.target.checked)} /> fine
          structure
        </label>
      ) : null}
    </div>
  );
}

function Line({ kind, name }: { kind: 'rest' | 'fine' | 'scatter'; name: string }) {
  return (
    <span>
      <svg width={24} height={12} aria-hidden="true">
        <path className={`chart-${kind}`} d="M0 6H24" />
      </svg>{' '}
      {name}
    </span>
  );
}
