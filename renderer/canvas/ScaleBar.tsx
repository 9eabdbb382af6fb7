import { M_PER_FT } from '../../core/units/constants.ts';
import { useApp } from '../store/context.ts';

const TARGET_PX = 110;

/** The longest 1, 2 or 5 times a power of ten whose bar still fits the wanted width. */
export function scaleBarLength(pxPerUnit: number, targetPx: number): number {
  const exact = targetPx / pxPerUnit;
  const decade = 10 ** Math.floor(Math.log10(exact));
  const step = [5, 2, 1].find((factor) => factor * decade <= exact) ?? 1;
  return step * decade;
}

/** A draughtsman's scale bar in the reader's unit. */
export function ScaleBar({ pxPerM }: { pxPerM: number }) {
  const unit = useApp((state) => state.preferences.length);
  const decimal = useApp((state) => state.preferences.decimal);
  const pxPerUnit = unit === 'ft' ? pxPerM * M_PER_FT : pxPerM;
  const length = scaleBarLength(pxPerUnit, TARGET_PX);
  const width = length * pxPerUnit;
  const text = `${String(length).replace('.', decimal)} ${unit}`;
  return (
    <svg className="sheet-scale" width={width + 40} height={26} role="img" aria-label={`Scale bar, ${text}`}>
      <g fill="none" stroke="currentColor">
        <rect x={0.5} y={18.5} width={width} height={5} />
        <rect x={0.5} y={18.5} width={width / 4} height={5} fill="currentColor" />
        <rect x={0.5 + width / 2} y={18.5} width={width / 4} height={5} fill="currentColor" />
      </g>
      <g fill="currentColor" fontSize={12} textAnchor="middle">
        <text x={4} y={13}>
          0
        </text>
        <text x={width} y={13}>
          {text}
        </text>
      </g>
    </svg>
  );
}
