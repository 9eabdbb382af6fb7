import { useState } from 'react';
import type { ServiceRisk } from '../../../../core/redundancy/types.ts';
import { BASIS_WORDS, shareText, useChanceText } from './chanceText.ts';

const FIRST_ROWS = 10;

/** The things and causes a service hangs on, those first whose perfection would spare most outages. */
export function RiskTable({
  risk,
  chosenId,
  onChoose,
}: {
  risk: ServiceRisk;
  chosenId: string | null;
  onChoose: (id: string) => void;
}) {
  const [isLong, setLong] = useState(false);
  const { chanceText } = useChanceText();
  const rows = isLong ? risk.rows : risk.rows.slice(0, FIRST_ROWS);
  if (rows.length === 0)
    return <p className="small">Only bounds are known here, so nothing can be said of its parts.</p>;
  return (
    <>
      <p className="small soft">
        <em>Perfect</em>: the share of the outages that would not happen if it never failed. <em>Takes part</em>: the
        share it has a hand in, alone or with one or two others (Fussell and Vesely). <em>Decides</em>: the chance that
        all hangs on it just then (Birnbaum). Choose a thing to state its chance yourself.
      </p>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Thing or cause</th>
            <th scope="col" className="num">
              Its chance
            </th>
            <th scope="col" className="num">
              Perfect
            </th>
            <th scope="col" className="num">
              Takes part
            </th>
            <th scope="col" className="num">
              Decides
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, label, chance, ifPerfect, takesPart, birnbaum }) => (
            <tr key={id} className={id === chosenId ? 'is-selected' : ''}>
              <th scope="row">
                <button type="button" className="link" aria-pressed={id === chosenId} onClick={() => onChoose(id)}>
                  {label}
                </button>
              </th>
              <td className="num">
                {chanceText(chance.nominal)} <span className="block small soft">{BASIS_WORDS[chance.basis]}</span>
              </td>
              <td className="num">{shareText(ifPerfect)}</td>
              <td className="num">{shareText(takesPart)}</td>
              <td className="num">{chanceText(birnbaum)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length < risk.rows.length ? (
        <div className="row">
          <button type="button" className="button" onClick={() => setLong(true)}>
            Show all {risk.rows.length}
          </button>
        </div>
      ) : null}
    </>
  );
}
