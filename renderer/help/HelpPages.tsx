import { useEffect, useRef, useState } from 'react';
import { Input, ListBox, ListBoxItem, SearchField } from 'react-aria-components';
import userGuide from '../../docs/user-guide.md?raw';
import { ACTIONS } from '../app/actions.ts';
import { shownChord } from '../app/keys.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { GuideText } from './GuideText.tsx';
import { guidePages, searchPages } from './guide.ts';
import { Marked } from './Marked.tsx';
import './help.css';

const KEYED = ACTIONS.filter(({ keys }) => keys.length > 0);
const PAGES = [
  ...guidePages(userGuide),
  {
    id: 'keys',
    title: 'Keys',
    blocks: [],
    text: ['Keys', ...KEYED.map(({ name, keys }) => `${name} ${keys.map(shownChord).join(' ')}`)].join('\n'),
  },
];

/** Contents and search on the left, the page read on the right. */
export function HelpPages({ close }: { close: () => void }) {
  const store = useAppStore();
  const asked = useApp((state) => state.helpPage);
  const [query, setQuery] = useState('');
  const found = searchPages(PAGES, query);
  // While a search leaves out the page that was being read, the first one found is shown.
  const shown = found.find(({ page }) => page.id === asked)?.page ?? found[0]?.page;
  const article = useRef<HTMLElement>(null);
  useEffect(() => {
    if (shown) article.current?.scrollTo(0, 0);
  }, [shown]);
  return (
    <div className="dialog-body help-body">
      <nav className="help-contents" aria-label="Contents">
        <SearchField aria-label="Search the help" value={query} onChange={setQuery} autoFocus>
          <Input placeholder="Search the help" />
        </SearchField>
        <p className="sr-only" role="status">
          {query === '' ? '' : `${found.length} ${found.length === 1 ? 'page has' : 'pages have'} it`}
        </p>
        <ListBox
          aria-label="Pages"
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={shown ? [shown.id] : []}
          onSelectionChange={(keys) => {
            const [id] = [...keys];
            if (id !== undefined) store.getState().setView({ helpPage: String(id) });
          }}
          renderEmptyState={() => <p className="empty">No page has all of these words.</p>}
        >
          {found.map(({ page, near }) => (
            <ListBoxItem key={page.id} id={page.id} textValue={page.title}>
              {page.title}
              {near ? (
                <span className="help-near">
                  <Marked text={near} query={query} />
                </span>
              ) : null}
            </ListBoxItem>
          ))}
        </ListBox>
      </nav>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long page must scroll by keyboard. */}
      <article className="help-page" ref={article} tabIndex={0} aria-label={shown?.title ?? 'Nothing found'}>
        {shown ? <h3 className="title">{shown.title}</h3> : null}
        {shown?.id === 'keys' ? <Keys /> : <GuideText blocks={shown?.blocks ?? []} query={query} />}
        {shown?.id === 'the-window' ? <TakeTour close={close} /> : null}
      </article>
    </div>
  );
}

function TakeTour({ close }: { close: () => void }) {
  const store = useAppStore();
  return (
    <p>
      <button
        type="button"
        className="link"
        onClick={() => {
          close();
          store.getState().setView({ tourStep: 0 });
        }}
      >
        Take the tour of the window
      </button>
    </p>
  );
}

function Keys() {
  return (
    <table className="table">
      <tbody>
        {KEYED.map((action) => (
          <tr key={action.id}>
            <th scope="row">{action.name}</th>
            <td>{action.keys.map(shownChord).join('  or  ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
