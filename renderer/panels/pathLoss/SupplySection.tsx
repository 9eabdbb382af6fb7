import { Button } from 'react-aria-components';
import type { Project } from '../../../core/model/project.ts';
import type { FeedResult } from '../../../core/power/types.ts';
import { itemTag } from '../../../core/report/words.ts';
import { useAppStore } from '../../store/context.ts';
import { useAssessment } from '../../store/derived.ts';
import { useFormat } from '../../ui/text.ts';
import { conductorText, currentText, dropText, isDropOver, measuredDropV, protectionText } from './supply.ts';

/** The DC feeds of the path's radio. */
export function SupplySection({ project, radioId }: { project: Project; radioId: string }) {
  const { feeds } = useAssessment();
  const own = feeds.filter((feed) => feed.loadId === radioId);
  const tag = itemTag(project, radioId);
  return (
    <section className="panel-section">
      <h3 className="heading">DC feed of {tag}</h3>
      {own.length === 0 ? (
        <p className="small soft">
          No feed to {tag} is drawn yet. Draw one from a breaker or panel to its supply terminals.
        </p>
      ) : (
        own.map((feed) => <FeedFacts key={feed.feedId} project={project} feed={feed} />)
      )}
      {own.length === 0 ? null : (
        <p className="small soft">
          Confirm conductor, insulation and protection against the local code; a licensed installer governs.
        </p>
      )}
    </section>
  );
}

function FeedFacts({ project, feed }: { project: Project; feed: FeedResult }) {
  const store = useAppStore();
  const { rich, quantity } = useFormat();
  const number = project.feeds.find(({ id }) => id === feed.feedId)?.number ?? feed.feedId;
  const isOver = isDropOver(feed);
  const isGuarded = feed.protection.verdict === 'good';
  const measuredV = measuredDropV(project, feed);
  return (
    <dl className="facts">
      <dt>Feed</dt>
      <dd>
        <Button
          className="button link small"
          onPress={() => store.getState().select([{ kind: 'feed', id: feed.feedId }])}
        >
          {number}
        </Button>
      </dd>
      <dt>Current</dt>
      <dd>{rich(currentText(project, feed))}</dd>
      <dt>Drop</dt>
      <dd>
        {rich(dropText(feed))} <Sign isGood={!isOver} good="Within" bad="Over" />
        {measuredV === null ? null : <span className="soft"> Measured: {quantity(measuredV, 'V')} below rest.</span>}
      </dd>
      <dt>Protection</dt>
      <dd>
        {rich(protectionText(feed))} <Sign isGood={isGuarded} good="Good" bad="Mend" />
      </dd>
      <dt>Conductor</dt>
      <dd>{rich(conductorText(feed))}</dd>
    </dl>
  );
}

function Sign({ isGood, good, bad }: { isGood: boolean; good: string; bad: string }) {
  return <span className={`grade grade--${isGood ? 'full' : 'lost'}`}>{isGood ? `✓ ${good}` : `✕ ${bad}`}</span>;
}
