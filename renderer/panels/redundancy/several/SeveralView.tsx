import { useState } from 'react';
import type { PairGroup } from '../../../../core/faultTree/pairs.ts';
import type { ServiceId } from '../../../../core/model/services.ts';
import type { ServiceCuts } from '../../../../core/redundancy/types.ts';
import { serviceOf } from '../../../../core/report/words.ts';
import { useStudy } from '../../../store/derived.ts';
import { EventOrThing } from '../EventOrThing.tsx';

/** What two or three failures together take away, service by service: the quieter page beside that of one failure. */
export function SeveralView() {
  const { cuts } = useStudy();
  const [chosen, choose] = useState<ServiceId | null>(null);
  const shown = cuts.find(({ serviceId }) => serviceId === chosen) ?? worthReading(cuts);
  return (
    <>
      <section className="panel-section">
        <h3 className="heading">How many together take a service away</h3>
        <p className="small soft">
          The least sets: none of their members can be spared. Parts and common causes (a flood, lightning, a fire) are
          counted alike. Choose a service to read its pairs.
        </p>
        <table className="table several">
          <thead>
            <tr>
              <th scope="col">Service</th>
              <th scope="col" className="num">
                One
              </th>
              <th scope="col" className="num">
                Two
              </th>
              <th scope="col" className="num">
                Three
              </th>
            </tr>
          </thead>
          <tbody>
            {cuts.map((each) => (
              <CountLine key={each.serviceId} cuts={each} isShown={each === shown} onShow={choose} />
            ))}
          </tbody>
        </table>
      </section>
      {shown ? <Sets cuts={shown} /> : null}
    </>
  );
}

/** The first service that pairs take away; reading starts there. */
function worthReading(cuts: readonly ServiceCuts[]): ServiceCuts | undefined {
  return cuts.find(({ pairs }) => pairs.length > 0) ?? cuts.find(({ lostFromStart }) => !lostFromStart);
}

function CountLine({
  cuts,
  isShown,
  onShow,
}: {
  cuts: ServiceCuts;
  isShown: boolean;
  onShow: (id: ServiceId) => void;
}) {
  const { serviceId, lostFromStart, countByOrder } = cuts;
  return (
    <tr className={isShown ? 'is-selected' : ''}>
      <th scope="row">
        <button type="button" className="link" aria-pressed={isShown} onClick={() => onShow(serviceId)}>
          {serviceOf(serviceId).name}
        </button>
      </th>
      {lostFromStart ? (
        <td colSpan={3} className="num soft">
          lost as drawn
        </td>
      ) : (
        [0, 1, 2].map((order) => (
          <td key={order} className="num">
            {countByOrder[order] ?? 0}
          </td>
        ))
      )}
    </tr>
  );
}

function Sets({ cuts }: { cuts: ServiceCuts }) {
  const { name } = serviceOf(cuts.serviceId);
  if (cuts.lostFromStart) {
    return (
      <section className="panel-section">
        <h3 className="heading">{name}</h3>
        <p className="small">There is no way at all as drawn, so nothing more need fail. One failure says why.</p>
      </section>
    );
  }
  return (
    <section className="panel-section" aria-live="polite">
      <h3 className="heading">{name}</h3>
      {cuts.singles.length > 0 ? (
        <div className="cut-group">
          <h4 className="heading">Alone</h4>
          <p className="small">Any one of</p>
          <Things ids={cuts.singles} />
        </div>
      ) : (
        <p className="small">Nothing takes it away alone.</p>
      )}
      {cuts.pairs.length > 0 ? (
        cuts.pairs.map((pair, index) => <Pair key={pair.either.join()} pair={pair} isFirst={index === 0} />)
      ) : (
        <p className="small">No two together do.</p>
      )}
      <Triples cuts={cuts} />
    </section>
  );
}

function Pair({ pair: { either, or }, isFirst }: { pair: PairGroup; isFirst: boolean }) {
  return (
    <div className="cut-group">
      {isFirst ? <h4 className="heading">Two together</h4> : null}
      <p className="small">{either.length > 1 ? 'Any one of' : ''}</p>
      <Things ids={either} />
      <p className="small">together with {or.length > 1 ? 'any one of' : ''}</p>
      <Things ids={or} />
    </div>
  );
}

const FIRST_TRIPLES = 12;

function Triples({ cuts: { triples, tripleCount } }: { cuts: ServiceCuts }) {
  const [isLong, setLong] = useState(false);
  if (tripleCount === 0) return <p className="small">No three together do, where no two of them would.</p>;
  if (triples.length === 0) {
    return <p className="small">{tripleCount} sets of three: too many to read, counted only.</p>;
  }
  const shown = isLong ? triples : triples.slice(0, FIRST_TRIPLES);
  return (
    <div className="cut-group">
      <h4 className="heading">Three together</h4>
      <ul className="plain-list triples">
        {shown.map((triple) => (
          <li key={triple.join()}>
            <Things ids={triple} joint=" with " />
          </li>
        ))}
      </ul>
      {shown.length < triples.length ? (
        <div className="row">
          <button type="button" className="button" onClick={() => setLong(true)}>
            Show all {tripleCount}
          </button>
        </div>
      ) : null}
    </div>
  );
}

function Things({ ids, joint = ', ' }: { ids: readonly string[]; joint?: string }) {
  return (
    <p className="things">
      {ids.map((id, index) => (
        <span key={id}>
          {index > 0 ? joint : ''}
          <EventOrThing id={id} />
        </span>
      ))}
    </p>
  );
}
