import type { ReactNode } from 'react';
import { Marked } from './Marked.tsx';
import type { Block, Inline } from './markdown.ts';

/** Blocks of the guide as elements; every word is set as text, never as markup. */
export function GuideText({ blocks, query }: { blocks: readonly Block[]; query: string }) {
  return numbered(blocks, (block, key) => <GuideBlock key={key} block={block} query={query} />);
}

function GuideBlock({ block, query }: { block: Block; query: string }) {
  const line = (inlines: readonly Inline[]): ReactNode => <Line inlines={inlines} query={query} />;
  switch (block.kind) {
    case 'heading':
      return (
        <h4 className="heading">
          <Marked text={block.text} query={query} />
        </h4>
      );
    case 'paragraph':
      return <p>{line(block.inlines)}</p>;
    case 'list': {
      const List = block.isOrdered ? 'ol' : 'ul';
      return (
        <List className="stack">
          {numbered(block.items, (item, key) => (
            <li key={key}>{line(item)}</li>
          ))}
        </List>
      );
    }
    case 'table':
      return (
        <div className="table-scroll">
          <table className="table">
            <thead>
              <tr>
                {numbered(block.head, (cell, key) => (
                  <th key={key} scope="col">
                    {line(cell)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {numbered(block.rows, (row, rowKey) => (
                <tr key={rowKey}>
                  {numbered(row, (cell, key) => (
                    <td key={key}>{line(cell)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      );
  }
}

function Line({ inlines, query }: { inlines: readonly Inline[]; query: string }) {
  return numbered(inlines, (inline, key) => {
    const text = <Marked text={inline.text} query={query} />;
    switch (inline.kind) {
      case 'strong':
        return <strong key={key}>{text}</strong>;
      case 'em':
        return <em key={key}>{text}</em>;
      case 'code':
        return <code key={key}>{text}</code>;
      // Links lead to other papers of the project, which the program does not carry: their words are enough here.
      case 'link':
      case 'text':
        return <span key={key}>{text}</span>;
    }
  });
}

/** The guide never changes while it is shown, so that an entry's place is its key. */
function numbered<T>(entries: readonly T[], draw: (entry: T, key: string) => ReactNode): ReactNode[] {
  return entries.map((entry, i) => draw(entry, String(i)));
}
