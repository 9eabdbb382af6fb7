import type { ReactNode } from 'react';
import { PALETTES } from '../../../core/drawing/palette.ts';
import type { Block, SheetFinding } from '../../../core/report/types.ts';
import { SvgDrawing } from '../../canvas/SvgDrawing.tsx';
import { columnShares, leastWidthRem } from './tableWidths.ts';

/** One block of a section, as the paper has it. `name` tells it from the others where it has no caption. */
export function BlockView({ block, name }: { block: Block; name: string }) {
  switch (block.kind) {
    case 'heading':
      return block.level === 3 ? <h5>{block.text}</h5> : <h4>{block.text}</h4>;
    case 'paragraph':
      return <p className={`sheet-${block.tone}`}>{block.text}</p>;
    case 'facts':
      return (
        <dl className="facts">
          {block.rows.map(([label, value]) => (
            <FactRow key={label} label={label} value={value} />
          ))}
        </dl>
      );
    case 'table':
      return <TableView block={block} name={block.caption || name} />;
    case 'matrix':
      return <MatrixView block={block} />;
    case 'cautions':
      return (
        <ul className="sheet-cautions">
          {block.items.map(({ title, text }) => (
            <li key={title}>
              <strong>{title}.</strong> {text}
            </li>
          ))}
        </ul>
      );
    case 'findings':
      return block.items.length === 0 ? <p>{block.empty}</p> : <FindingList items={block.items} />;
    case 'blanks':
      return <BlanksView block={block} />;
    case 'drawing':
      return (
        <figure className="sheet-drawing">
          <SvgDrawing drawing={block.drawing} palette={PALETTES.print} label={block.caption || name} />
          {block.caption ? <figcaption>{block.caption}</figcaption> : null}
        </figure>
      );
    case 'signatures':
      return (
        <dl className="facts">
          {block.roles.map((role) => (
            <FactRow key={role} label={role} value="Name, licence or certificate, date, signature" />
          ))}
        </dl>
      );
  }
}

function FactRow({ label, value }: { label: string; value: string }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>{value}</dd>
    </>
  );
}

/** A wide table in a box of its own that the keyboard can scroll. */
function ScrollTable({ name, children }: { name: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" aria-label={name} tabIndex={0}>
      {children}
    </section>
  );
}

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

function TableView({ block, name }: { block: Of<'table'>; name: string }) {
  if (block.rows.length === 0) return <p className="sheet-quiet">{block.empty}</p>;
  const cells = (row: readonly string[]) =>
    row.map((text, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column
      <td key={i} className={block.columns[i]?.align === 'end' ? 'num' : ''}>
        {text}
      </td>
    ));
  return (
    <ScrollTable name={name}>
      <table className="table" style={{ minWidth: `${leastWidthRem(block.columns)}rem` }}>
        {block.caption ? <caption>{block.caption}</caption> : null}
        <colgroup>
          {columnShares(block.columns).map(({ header, percent }) => (
            <col key={header} style={{ width: `${percent}%` }} />
          ))}
        </colgroup>
        <thead>
          <tr>
            {block.columns.map(({ header, align }) => (
              <th key={header} scope="col" className={align === 'end' ? 'num' : ''}>
                {header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {block.rows.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity and the sheet is redrawn as a whole
            <tr key={i}>{cells(row)}</tr>
          ))}
          {block.total ? <tr className="is-total">{cells(block.total)}</tr> : null}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function MatrixView({ block }: { block: Of<'matrix'> }) {
  return (
    <ScrollTable name={block.caption}>
      <table className="table">
        <caption>{block.caption}</caption>
        <thead>
          <tr>
            <th scope="col">Event</th>
            {block.columns.map(({ code, name }) => (
              <th key={code} scope="col" title={name}>
                {code}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {block.rows.map(({ label, letters }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {block.columns.map(({ code }, i) => (
                <td key={code}>{letters[i]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function FindingList({ items }: { items: readonly SheetFinding[] }) {
  return items.map((finding) => (
    <div key={finding.mark} className="sheet-finding">
      <h4>
        {finding.mark} {finding.title} <span className="sheet-quiet">{finding.concerns}</span>
      </h4>
      <p>
        {finding.measured} Limit: {finding.limit} {finding.authority}
      </p>
      <p>{finding.action}</p>
      {finding.overruled ? <p className="sheet-strong">{finding.overruled}</p> : null}
    </div>
  ));
}

function BlanksView({ block }: { block: Of<'blanks'> }) {
  return (
    <table className="table">
      <caption>{block.caption}</caption>
      <thead>
        <tr>
          <th scope="col">Check</th>
          <th scope="col">Expected</th>
          <th scope="col">Measured</th>
        </tr>
      </thead>
      <tbody>
        {block.rows.map(({ label, expected, unit }) => (
          <tr key={label}>
            <td>{label}</td>
            <td>{expected}</td>
            <td>
              <span className="sheet-blank" /> {unit}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
