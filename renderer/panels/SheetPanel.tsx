import { type ReactNode, useMemo } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { PALETTES } from '../../core/drawing/palette.ts';
import { installSheet } from '../../core/report/sheet.ts';
import type { Block, SheetFinding, SheetSection } from '../../core/report/types.ts';
import { exportLosses, exportPdf, exportSchedule, exportSvg, today } from '../app/fileActions.ts';
import { SvgDrawing } from '../canvas/SvgDrawing.tsx';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import './sheet.css';

/** The install sheet as it will be printed, section by section, and the ways to take it away. */
export function SheetPanel() {
  const store = useAppStore();
  const host = useHost();
  const assessment = useAssessment();
  const project = useApp((state) => state.preview ?? state.project);
  const preferences = useApp((state) => state.preferences);
  const { paper } = preferences;
  const sheet = useMemo(
    () => installSheet(project, assessment, { paper, preferences, date: today() }),
    [project, assessment, paper, preferences],
  );
  return (
    <div className="panel sheet-panel">
      <section className="panel-section">
        <div className="row">
          <Button className="button button--primary" onPress={() => exportPdf(store, host)}>
            Export PDF
          </Button>
          <Button className="button" onPress={() => exportSchedule(store, host)}>
            Cable schedule CSV
          </Button>
          <Button className="button" onPress={() => exportLosses(store, host)}>
            Path losses CSV
          </Button>
          <Button className="button" onPress={() => exportSvg(store, host)}>
            Drawing SVG
          </Button>
        </div>
        <ToggleButtonGroup
          aria-label="Paper"
          className="row"
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[paper]}
          onSelectionChange={(keys) => store.getState().setPreferences({ paper: keys.has('Letter') ? 'Letter' : 'A4' })}
        >
          <ToggleButton id="A4">A4</ToggleButton>
          <ToggleButton id="Letter">Letter</ToggleButton>
        </ToggleButtonGroup>
      </section>
      <article className="sheet-page" aria-label="Install sheet preview">
        <header>
          <h2>{sheet.title}</h2>
          <p>{sheet.subtitle}</p>
        </header>
        {sheet.sections.map((section) => (
          <SectionView key={section.id} section={section} />
        ))}
        <footer className="small">{sheet.titleBlock.governs}</footer>
      </article>
    </div>
  );
}

function SectionView({ section }: { section: SheetSection }) {
  return (
    <section aria-label={section.title}>
      <h3>{section.title}</h3>
      {section.blocks.map((block, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: blocks have no identity and the sheet is redrawn as a whole
        <BlockView key={i} block={block} />
      ))}
    </section>
  );
}

function BlockView({ block }: { block: Block }) {
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
      return <TableView block={block} />;
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
          <SvgDrawing drawing={block.drawing} palette={PALETTES.print} label={block.caption || 'Drawing'} />
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

function TableView({ block }: { block: Of<'table'> }) {
  if (block.rows.length === 0) return <p className="sheet-quiet">{block.empty}</p>;
  const cells = (row: readonly string[]) =>
    row.map((text, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column
      <td key={i} className={block.columns[i]?.align === 'end' ? 'num' : ''}>
        {text}
      </td>
    ));
  return (
    <ScrollTable name={block.caption || 'Table'}>
      <table className="table">
        <caption>{block.caption}</caption>
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
      <h5>
        {finding.mark} {finding.title} <span className="sheet-quiet">{finding.concerns}</span>
      </h5>
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
