import type { Independence } from '../../../core/redundancy/types.ts';
import { useAppStore } from '../../store/context.ts';
import { useStudy } from '../../store/derived.ts';
import { EventOrThing } from './EventOrThing.tsx';
import { SeaAreaChoice } from './rules/SeaAreaChoice.tsx';

const VERDICTS: Readonly<Record<Independence['verdict'], { sign: string; words: string; className: string }>> = {
  independent: { sign: '✓', words: 'Two independent means', className: 'full' },
  shared: { sign: '!', words: 'Two means, but they share', className: 'reduced' },
  'one-service': { sign: '!', words: 'One radio service only', className: 'reduced' },
  none: { sign: '–', words: 'No means', className: 'lost' },
};

const RADIO_SERVICES = {
  'vhf-dsc': 'VHF',
  'mf-hf-dsc': 'MF/HF',
  satellite: 'satellite',
  'beacon-406': '406 MHz beacon',
} as const;

/** Whether the shore can be alerted by two separate means that nothing takes away together. */
export function IndependenceSection() {
  const { independence } = useStudy();
  const store = useAppStore();
  const { verdict, sentence, means, countedIds, pair } = independence;
  const { sign, words, className } = VERDICTS[verdict];
  const shared = [...(pair?.sharedComponents ?? []), ...(pair?.sharedCauses ?? [])];
  return (
    <section className="panel-section">
      <h3 className="heading">Two separate means of alerting the shore</h3>
      <p>
        <span className={`grade grade--${className}`}>
          <span aria-hidden="true">{sign}</span> {words}
        </span>
      </p>
      <p className="small">{sentence}</p>
      <SeaAreaChoice />
      {shared.length > 0 ? (
        <ul className="chip-list" aria-label="Shared by both">
          {shared.map((id) => (
            <li key={id}>
              <EventOrThing id={id} />
            </li>
          ))}
        </ul>
      ) : null}
      {countedIds.length > 0 ? (
        <p className="small soft">
          Counted:{' '}
          {means
            .filter(({ id }) => countedIds.includes(id))
            .map(({ id, label, radioService, itemId }, index) => (
              <span key={id}>
                {index > 0 ? ', ' : ''}
                <button
                  type="button"
                  className="link"
                  onClick={() => store.getState().select([{ kind: 'item', id: itemId }])}
                >
                  {label}
                </button>{' '}
                ({RADIO_SERVICES[radioService]})
              </span>
            ))}
          . First functional requirement of the GMDSS (47 CFR 80.1081(a), SOLAS IV/4); no verdict on the boat.
        </p>
      ) : null}
    </section>
  );
}
