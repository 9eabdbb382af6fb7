import { useRef } from 'react';
import type { Sheet, SheetSection } from '../../../core/report/types.ts';
import { BlockView } from './SheetBlocks.tsx';

/** The sheet on paper, with its contents to go by. */
export function SheetArticle({ sheet }: { sheet: Sheet }) {
  const article = useRef<HTMLElement>(null);
  const goTo = (id: string): void => {
    const heading = article.current?.querySelector<HTMLElement>(`[data-section="${id}"]`);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  };
  return (
    <article className="sheet-page" aria-label="Install sheet preview" ref={article}>
      <header>
        <h2>{sheet.title}</h2>
        <p>{sheet.subtitle}</p>
      </header>
      <nav aria-label="Contents of the sheet">
        <ol className="sheet-contents">
          {sheet.sections.map(({ id, title }) => (
            <li key={id}>
              <button type="button" className="link" onClick={() => goTo(id)}>
                {title}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      {sheet.sections.map((section) => (
        <SectionView key={section.id} section={section} />
      ))}
      <footer className="small">{sheet.titleBlock.governs}</footer>
    </article>
  );
}

function SectionView({ section }: { section: SheetSection }) {
  return (
    <section aria-label={section.title}>
      <h3 tabIndex={-1} data-section={section.id}>
        {section.title}
      </h3>
      {section.blocks.map((block, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: blocks have no identity and the sheet is redrawn as a whole
        <BlockView key={i} block={block} name={`${section.title}, part ${i + 1}`} />
      ))}
    </section>
  );
}
