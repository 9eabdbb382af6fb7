import { type KeyboardEvent, useId, useRef, useState } from 'react';
import type { HfBand, HfDay } from '../../../core/reach/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useFormat } from '../../ui/text.ts';
import { inLanes } from '../range/lanes.ts';
import { tagWidth } from '../range/marks.ts';
import { HfGridKey } from './HfGridKey.tsx';
import { HourGlyph, HourPatterns } from './HourGlyph.tsx';
import { type GridLayout, type GridRow, gridLayout, moved, NAME_GAP_PX, SUN_TOP } from './hfGrid.ts';
import { cellName, cellReading, clock } from './hfWords.ts';

/** Which band carries at which hour: bands at their frequencies, hours across, with the lines that decide over them. */
export function HfGrid({
  day,
  bands,
  hour,
  onHour,
}: {
  day: HfDay;
  bands: readonly HfBand[];
  hour: number;
  onHour: (hour: number) => void;
}) {
  const { rich } = useFormat();
  const patternId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const layout = gridLayout(day, bands, width);
  const [chosenRow, setRow] = useState<number | null>(null);
  const row = rowShown(layout, chosenRow, hour);
  const shown = layout.rows[row]?.cells.find(({ cell }) => cell.hour === hour);
  const goTo = (next: At): void => {
    setRow(next.row);
    onHour(next.hour);
  };
  const band = layout.rows[row]?.band;
  return (
    <div ref={box} className="chart">
      <div className="hours">
        <svg width={width} height={layout.height} aria-hidden="true">
          <HourPatterns id={patternId} />
          <Backdrop layout={layout} hour={hour} />
        </svg>
        <Cells layout={layout} width={width} row={row} hour={hour} patternId={patternId} onFocus={goTo} />
        <svg width={width} height={layout.height} aria-hidden="true" className="hours-lines">
          <Lines layout={layout} />
          {shown ? <Finger layout={layout} x={shown.x} y={shown.y} /> : null}
        </svg>
      </div>
      <HfGridKey patternId={patternId} />
      <p className="reading">{band && shown ? rich(cellReading(day, band, shown.cell)) : ''}</p>
    </div>
  );
}

interface At {
  readonly row: number;
  readonly hour: number;
}

/** The cells, each to be reached by arrow keys; one of them by the Tab key. */
function Cells({
  layout,
  width,
  row,
  hour,
  patternId,
  onFocus,
}: At & { layout: GridLayout; width: number; patternId: string; onFocus: (at: At) => void }) {
  const { rows, height } = layout;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a grid over a drawing
    <div
      role="grid"
      aria-label="Bands by hour of the day, highest band first"
      aria-rowcount={rows.length}
      aria-colcount={25}
    >
      <svg width={width} height={height} role="presentation">
        {rows.map((each, index) => (
          <Row
            key={each.band.id}
            row={each}
            layout={layout}
            patternId={patternId}
            focusedHour={index === row ? hour : null}
            onFocus={(at) => onFocus({ row: index, hour: at })}
            onKey={(event, at) => moveFocus(event, { row: index, hour: at }, rows.length)}
          />
        ))}
      </svg>
    </div>
  );
}

/** The row chosen; before one is, that of the best band of the hour. */
function rowShown(layout: GridLayout, chosen: number | null, hour: number): number {
  if (chosen !== null) return Math.min(chosen, layout.rows.length - 1);
  const best = layout.rows.findIndex(({ cells }) => cells.some(({ cell }) => cell.hour === hour && cell.isBest));
  return Math.max(0, best);
}

function moveFocus(event: KeyboardEvent<SVGGElement>, at: At, rowCount: number): void {
  const next = moved(at, event.key, rowCount);
  if (!next) return;
  event.preventDefault();
  const grid = event.currentTarget.closest('svg');
  grid?.querySelector<SVGGElement>(`[data-cell="${next.row}-${next.hour}"]`)?.focus();
}

function Row({
  row,
  layout,
  patternId,
  focusedHour,
  onFocus,
  onKey,
}: {
  row: GridRow;
  layout: GridLayout;
  patternId: string;
  /** Hour of the cell that the Tab key comes to, or null when it is in another row. */
  focusedHour: number | null;
  onFocus: (hour: number) => void;
  onKey: (event: KeyboardEvent<SVGGElement>, hour: number) => void;
}) {
  const { columnPx, cellPx, rows } = layout;
  const index = rows.indexOf(row);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of a drawing; SVG has no table
    <g role="row" aria-rowindex={index + 1}>
      {/* biome-ignore lint/a11y/useSemanticElements: a head in a drawing; SVG has no table */}
      <text role="rowheader" className="hours-band" x={layout.plot.left - NAME_GAP_PX} y={row.y + 4} textAnchor="end">
        {row.band.name}
      </text>
      {row.cells.map(({ cell, x, y }) => (
        // biome-ignore lint/a11y/useSemanticElements: a cell of a drawing; SVG has no table
        <g
          key={cell.hour}
          role="gridcell"
          tabIndex={cell.hour === focusedHour ? 0 : -1}
          aria-colindex={cell.hour + 2}
          aria-label={cellName(row.band, cell)}
          data-cell={`${index}-${cell.hour}`}
          className="hours-cell"
          onFocus={() => onFocus(cell.hour)}
          onClick={(event) => event.currentTarget.focus()}
          onKeyDown={(event) => onKey(event, cell.hour)}
        >
          <HourGlyph cell={cell} x={x} y={y} width={columnPx - 1} height={cellPx} patternId={patternId} />
        </g>
      ))}
    </g>
  );
}

/** Hours along the foot, the strip of the sun along the head, and the column that is read. */
function Backdrop({ layout, hour }: { layout: GridLayout; hour: number }) {
  const { plot, suns, nights, x, columnPx } = layout;
  const tags = suns.map((sun) => ({ ...sun, text: `${sun.kind} ${clock(sun.hour)}`, atX: sun.x }));
  const placed = inLanes(
    tags.map((tag) => ({ atX: tag.atX, width: tagWidth(tag.text) })),
    plot.left,
    plot.right,
  );
  return (
    <g>
      <rect
        className="hours-column"
        x={x(hour) - columnPx / 2}
        y={plot.top}
        width={columnPx}
        height={plot.bottom - plot.top}
      />
      <rect className="hours-day" x={plot.left} y={SUN_TOP} width={plot.right - plot.left} height={8} />
      {nights.map(({ from, to }) => (
        <rect key={from} className="hours-night" x={from} y={SUN_TOP} width={to - from} height={8} />
      ))}
      {tags.map((tag, index) => (
        <g key={tag.kind}>
          <path className="hours-sun" d={`M${tag.x} ${SUN_TOP}V${plot.bottom}`} />
          <text className="range-tick" x={(placed[index]?.left ?? 0) + 2} y={SUN_TOP - 5}>
            {tag.text}
          </text>
        </g>
      ))}
      {[0, 3, 6, 9, 12, 15, 18, 21].map((each) => (
        <text key={each} className="range-tick" x={x(each)} y={plot.bottom + 14} textAnchor="middle">
          {each}
        </text>
      ))}
      <text className="range-tick" x={plot.right} y={plot.bottom + 29} textAnchor="end">
        hour, local solar time
      </text>
      <path className="chart-frame" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
    </g>
  );
}

function Lines({ layout: { plot, muf, working } }: { layout: GridLayout }) {
  const clipId = useId();
  return (
    <g clipPath={`url(#${clipId})`}>
      <clipPath id={clipId}>
        <rect x={plot.left} y={plot.top - 4} width={plot.right - plot.left} height={plot.bottom - plot.top + 4} />
      </clipPath>
      <path className="hours-halo" d={muf} />
      <path className="hours-muf" d={muf} />
      <path className="hours-halo" d={working} />
      <path className="hours-working" d={working} />
    </g>
  );
}

/** Frame round the cell that is read out below. */
function Finger({ layout: { columnPx, cellPx }, x, y }: { layout: GridLayout; x: number; y: number }) {
  return (
    <rect
      className="hours-finger"
      x={x - columnPx / 2 - 1}
      y={y - cellPx / 2 - 2}
      width={columnPx + 2}
      height={cellPx + 4}
    />
  );
}
