import { useState } from 'react';
import type { PairGroup } from '../../../../core/faultTree/pairs.ts';
import type { ServiceId } from '../../../../core/model/services.ts';
import type { ServiceCuts } from '../../../../core/redundancy/types.ts';
import { serviceOf } from '../../../../core/report/words.ts';
import { useStudy } from '../../../store/derived.ts';
import { Chips } from '../../range/Chips.tsx';
import { EventOrThing } from '../EventOrThing.tsx';

/** What two or three failures together take away, service by service: the quieter page beside that of one failure. */
export function SeveralView() {
  const study = useStudy();
  const [asked, ask] = useState<Asked>('lost');
  const cuts = asked === 'lost' ? study.cuts : study.cuts.map(({ serviceId }) => study.cutsOfFull(serviceId));
  const [chosen, choose] = useState<ServiceId | null>(null);
  const shown = cuts.find(({ serviceId }) => serviceId === chosen) ?? worthReading(cuts);
  return (
    <>
      <section className="panel-section">
        <h3 className="heading">How many together take a service away</h3>
        <p className="small soft">
          The least sets: none of their members can be spared. Parts and common causes (a flood, lightning, a fire) are
          counted alike, up to three together; fours and more are not looked for. Choose a service to read its pairs.
        </p>
        <Chips label="Asked is what makes a service" options={ASKED} value={asked} onChange={ask} isLabelHidden />
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
              <CountLine key={each.serviceId} cuts={each} isShown={each === shown} asked={asked} onShow={choose} />
            ))}
          </tbody>
        </table>
      </section>
      {shown ? <Sets cuts={shown} asked={asked} /> : null}
    </>
  );
}

const ASKED = [
  { id: 'lost', name: 'Lost' },
  { id: 'full', name: 'No longer full' },
] as const;
type Asked = (typeof ASKED)[number]['id'];

/** What a service is said to be that fails without anything failing. */
const AS_DRAWN: Readonly<Record<Asked, string>> = { lost: 'lost as drawn', full: 'not full as drawn' };

/** The first service that pairs take away; reading starts there. */
function worthReading(cuts: readonly ServiceCuts[]): ServiceCuts | undefined {
  return cuts.find(({ pairs }) => pairs.length > 0) ?? cuts.find(({ lostFromStart }) => !lostFromStart);
}

function CountLine({
  cuts,
  isShown,
  asked,
  onShow,
}: {
  cuts: ServiceCuts;
  isShown: boolean;
  asked: Asked;
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
          {AS_DRAWN[asked]}
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

function Sets({ cuts, asked }: { cuts: ServiceCuts; asked: Asked }) {
  const { name } = serviceOf(cuts.serviceId);
  if (cuts.lostFromStart) {
    return (
      <section className="panel-section">
        <h3 className="heading">{name}</h3>
        <p className="small">
          {asked === 'lost' ? 'There is no way at all' : 'No way gives it fully'} as drawn, so nothing more need fail.
          One failure says why.
        </p>
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
        <p className="small">Nothing does it alone.</p>
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
