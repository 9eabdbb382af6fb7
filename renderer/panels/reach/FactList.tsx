import { useFormat } from '../../ui/text.ts';
import type { Fact } from './linkFigures.ts';

/** Figures with what they mean under them. */
export function FactList({ facts }: { facts: readonly Fact[] }) {
  const { rich } = useFormat();
  return (
    <dl className="facts reach-facts">
      {facts.map(({ name, value, note }) => (
        <div key={name} className="facts-row">
          <dt>{name}</dt>
          <dd>
            {rich(value)}
            {note === null ? null : <span className="basis">{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
