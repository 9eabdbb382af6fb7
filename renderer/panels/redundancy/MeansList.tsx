import type { MeansLeft } from '../../../core/redundancy/meansLeft.ts';
import { useFormat } from '../../ui/text.ts';

/** The sets that still serve, the best first, each with its reach. */
export function MeansList({ means }: { means: readonly MeansLeft[] }) {
  const { quantity, rich } = useFormat();
  if (!means.some(({ reach, note }) => reach || note.length > 0)) return null;
  return (
    <ul className="means">
      {means.map(({ way, reach, note }) => (
        <li key={way.id}>
          <strong>{way.label}</strong>
          {reach
            ? `: ${quantity(reach.dependable.nominalKm, 'km', 0)} dependable, ${quantity(reach.typical.nominalKm, 'km', 0)} typical.`
            : ''}
          {note.length > 0 ? ` ${rich(note)}` : ''}
        </li>
      ))}
    </ul>
  );
}
