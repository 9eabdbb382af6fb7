import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { DataLink, Endpoint, Feed, Project, Run } from '../../../core/model/project.ts';
import { CARRIES_WORDS, itemTag } from '../../../core/report/words.ts';
import { Jump } from './fields.tsx';

/** Every line at an item, from which port to which thing; each selects the line. */
export function ItemConnections({ project, itemId }: { project: Project; itemId: string }) {
  const index = indexProject(project);
  const runs = index.runsAtItem.get(itemId) ?? [];
  const feeds = [...(index.feedsInto.get(itemId) ?? []), ...(index.feedsFrom.get(itemId) ?? [])];
  const links = index.linksAtItem.get(itemId) ?? [];
  const hasPorts = (index.effective.get(itemId)?.ports.length ?? 0) > 0;
  return (
    <section className="panel-section" aria-label="Connected to">
      <h3 className="heading">Connected to</h3>
      {runs.length + feeds.length + links.length === 0 ? (
        <p className="small soft">
          {hasPorts
            ? 'Nothing yet. Press Connect below, or drag from one of its ports on the drawing.'
            : 'It stands alone: nothing is ever connected to it.'}
        </p>
      ) : null}
      <ul className="plain-list">
        {runs.map((run) => (
          <Line key={run.id} project={project} itemId={itemId} kind="run" line={run}>
            {index.parts.get(run.cableId)?.name ?? 'unknown cable'}
          </Line>
        ))}
        {feeds.map((feed) => (
          <Line key={feed.id} project={project} itemId={itemId} kind="feed" line={feed}>
            {feed.to.itemId === itemId ? 'supplied by' : 'supplies'}
          </Line>
        ))}
        {links.map((link) => (
          <Line key={link.id} project={project} itemId={itemId} kind="link" line={link}>
            {link.carries.map((each) => CARRIES_WORDS[each]).join(', ')}
          </Line>
        ))}
      </ul>
    </section>
  );
}

function Line({
  project,
  itemId,
  kind,
  line,
  children,
}: {
  project: Project;
  itemId: string;
  kind: 'run' | 'feed' | 'link';
  line: Run | Feed | DataLink;
  children: string;
}) {
  const other = line.from.itemId === itemId ? line.to : line.from;
  return (
    <li className="small connection">
      <Jump subject={{ kind, id: line.id }}>{line.number}</Jump>
      <span>{portLabel(project, line.from.itemId === itemId ? line.from : line.to)}</span>
      <span>
        {children} <Jump subject={{ kind: 'item', id: other.itemId }}>{itemTag(project, other.itemId)}</Jump>
      </span>
    </li>
  );
}

function portLabel(project: Project, end: Endpoint): string {
  const port = indexProject(project)
    .effective.get(end.itemId)
    ?.ports.find(({ id }) => id === end.portId);
  return port?.label ?? end.portId;
}
