import { indexProject } from '../../../core/catalogue/lookup.ts';
import { setFeed } from '../../../core/edit/feeds.ts';
import type { Feed, Project } from '../../../core/model/project.ts';
import type { FeedResult } from '../../../core/power/types.ts';
import { Choice } from '../../app/Choice.tsx';
import { useApp } from '../../store/context.ts';
import { useAssessment } from '../../store/derived.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { TextRow } from '../../ui/TextRow.tsx';
import { useFormat } from '../../ui/text.ts';
import { Tick, useEdit, WordChoice } from './fields.tsx';
import { LineHeading, LineNotes } from './Line.tsx';
import { decimalsOf } from './reckon.ts';
import { FindingsAbout, HangsOn } from './Shared.tsx';
import { STATUSES, VERDICTS } from './words.ts';

/** What a fuse starts as when one is put in: a common size, at the source, both to be put right. */
const NEW_FUSE = { ratingA: 10, fromSourceM: 0.1 };

const areaDigits = (areaMm2: number): number => Math.min(2, decimalsOf(areaMm2, 'mm2', 2));

type FeedChange = Parameters<typeof setFeed>[2];

/** Everything about one DC feed. */
export function FeedView({ project, feed }: { project: Project; feed: Feed }) {
  const edit = useEdit();
  const result = useAssessment().feeds.find(({ feedId }) => feedId === feed.id);
  const subject = { kind: 'feed', id: feed.id } as const;
  const change = (what: string, values: FeedChange): boolean =>
    edit(`${feed.number}: ${what}`, (before) => setFeed(before, feed.id, values));
  return (
    <>
      <LineHeading project={project} line={feed} what="DC feed" />
      <section className="panel-section" aria-label="Conductor">
        <div className="particulars-fields particulars-fields--three">
          <TextRow
            label="Number"
            value={feed.number}
            isRequired
            onCommit={(number) => change(`is now ${number}`, { number })}
          />
          <QuantityField
            label="Length, one way"
            value={feed.lengthM}
            unit="m"
            digits={2}
            min={0}
            max={2000}
            onCommit={(lengthM) => lengthM !== null && change('length changed', { lengthM })}
          />
          <WordChoice
            label="Status"
            words={STATUSES}
            value={feed.status}
            onChange={(status) => change('status changed', { status })}
          />
        </div>
        <ConductorChoice
          project={project}
          feed={feed}
          onChange={(conductorId) => change('another conductor', { conductorId })}
        />
      </section>
      <Fuse feed={feed} onChange={change} />
      <FeedResults result={result} />
      <HangsOn subject={subject} />
      <FindingsAbout subject={subject} />
      <LineNotes subject={subject} line={feed} onCommit={(notes) => change('notes changed', { notes })} />
    </>
  );
}

function ConductorChoice({
  project,
  feed,
  onChange,
}: {
  project: Project;
  feed: Feed;
  onChange: (conductorId: string) => void;
}) {
  const { quantity } = useFormat();
  const wire = useApp((state) => state.preferences.wire);
  const options = [...indexProject(project).parts.values()].flatMap((part) => {
    if (part.kind !== 'conductor') return [];
    const { areaMm2, ohmPerKm, ampacityA } = part.figures;
    const note = `${quantity(ohmPerKm.value, 'ohm/km')}; carries ${quantity(ampacityA.value, 'A', 0)}`;
    // The name of a listed size says it already, in one of the two systems.
    const isNamedSo = (part.traits.awg === null) === (wire === 'mm2');
    return [
      {
        id: part.id,
        name: part.name,
        note: isNamedSo ? note : `${quantity(areaMm2.value, 'mm2', areaDigits(areaMm2.value))}; ${note}`,
      },
    ];
  });
  const chosen = options.find(({ id }) => id === feed.conductorId);
  return (
    <div className="stack">
      <Choice
        label="Conductor"
        options={options}
        value={feed.conductorId}
        onChange={(id) => id !== feed.conductorId && onChange(id)}
      />
      {chosen ? <p className="small soft">{chosen.note}</p> : null}
    </div>
  );
}

function Fuse({ feed, onChange }: { feed: Feed; onChange: (what: string, values: FeedChange) => void }) {
  const { fuse } = feed;
  return (
    <section className="panel-section" aria-label="Fuse">
      <Tick
        label="A fuse of its own in this feed"
        isTicked={fuse !== null}
        onChange={(has) => onChange(has ? 'fuse put in' : 'fuse taken out', { fuse: has ? NEW_FUSE : null })}
      />
      {fuse ? (
        <div className="particulars-fields particulars-fields--two">
          <QuantityField
            label="Rating"
            value={fuse.ratingA}
            unit="A"
            digits={1}
            min={0.1}
            max={10_000}
            onCommit={(ratingA) => ratingA !== null && onChange('fuse rating changed', { fuse: { ...fuse, ratingA } })}
          />
          <QuantityField
            label="Along the wire from the source"
            value={fuse.fromSourceM}
            unit="m"
            digits={2}
            min={0}
            max={2000}
            onCommit={(fromSourceM) =>
              fromSourceM !== null && onChange('fuse moved', { fuse: { ...fuse, fromSourceM } })
            }
          />
        </div>
      ) : (
        <p className="small soft">A breaker it starts from protects it too and is an item of its own.</p>
      )}
    </section>
  );
}

function FeedResults({ result }: { result: FeedResult | undefined }) {
  const { quantity } = useFormat();
  if (!result) {
    return (
      <section className="panel-section" aria-label="Drop">
        <p className="small soft">Nothing is computed for this feed: its conductor is not one this program knows.</p>
      </section>
    );
  }
  const { currentA, dropV, totalDropV, totalDropPercent, limitPercent, protection, smallestAreaMm2 } = result;
  const isOver = totalDropPercent > limitPercent;
  return (
    <section className="panel-section" aria-label="Drop and protection">
      <h3 className="heading">Drop and protection</h3>
      <dl className="facts">
        <dt>Current on transmit</dt>
        <dd>{quantity(currentA, 'A', 2)}</dd>
        <dt>Drop in this feed</dt>
        <dd>{quantity(dropV, 'V')}, out and back</dd>
        <dt>From the battery</dt>
        <dd>
          {quantity(totalDropV, 'V')}, {quantity(totalDropPercent, 'percent', 1)} of at most{' '}
          {quantity(limitPercent, 'percent', 1)}{' '}
          <span className={isOver ? 'grade grade--lost' : 'grade grade--full'}>{isOver ? 'too much' : 'within'}</span>
        </dd>
        <dt>Would do</dt>
        <dd>
          {smallestAreaMm2 === null
            ? 'No listed conductor keeps the drop within the limit.'
            : `${quantity(smallestAreaMm2, 'mm2', areaDigits(smallestAreaMm2))} at the least`}
        </dd>
        <dt>Protection</dt>
        <dd>
          {VERDICTS[protection.verdict]}
          {protection.ratingA === null ? null : ` ${quantity(protection.ratingA, 'A')} is fitted.`} At most{' '}
          {quantity(protection.largestRatingA, 'A', 1)} suits this conductor.
        </dd>
      </dl>
    </section>
  );
}
