import { useDeferredValue, useMemo } from 'react';
import type { Project } from '../../../core/model/project.ts';
import { type Counts, compareLayouts, type LayoutNumbers } from './layouts.ts';

/** The layouts of the boat side by side: what each failure takes from each of them. */
export function Layouts({ project }: { project: Project }) {
  // Assessing every layout is the dearest thing on this page: while something is dragged it may lag behind.
  const settled = useDeferredValue(project);
  const { layouts, events } = useMemo(() => compareLayouts(settled), [settled]);
  return (
    <section className="panel-section">
      <h3 className="heading">Layouts side by side</h3>
      <p className="small soft">
        Services lost and reduced by each failure. Change layouts with Layout in the bar at the top.
      </p>
      <div className="table-scroll">
        <table className="table layouts">
          <Heads layouts={layouts} />
          <tbody>
            {events.map(({ id, label }) => (
              <tr key={id}>
                <th scope="row">{label}</th>
                {layouts.map((layout) => (
                  <CountCells key={layout.id} counts={layout.byEvent.get(id)} against={layouts[0]?.byEvent.get(id)} />
                ))}
              </tr>
            ))}
            <tr className="is-total">
              <th scope="row">All failures together</th>
              {layouts.map((layout) => (
                <CountCells key={layout.id} counts={layout.total} against={layouts[0]?.total} />
              ))}
            </tr>
            <WideRow name="Single points of failure" layouts={layouts} text={(layout) => String(layout.singlePoints)} />
            <WideRow
              name="Remarks A / B / C"
              layouts={layouts}
              text={({ remarks }) => `${remarks.A} / ${remarks.B} / ${remarks.C}`}
            />
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Heads({ layouts }: { layouts: readonly LayoutNumbers[] }) {
  return (
    <thead>
      <tr>
        <th scope="col" rowSpan={2}>
          Event
        </th>
        {layouts.map(({ id, name }) => (
          <th key={id} scope="colgroup" colSpan={2}>
            {name}
          </th>
        ))}
      </tr>
      <tr>
        {layouts.map(({ id }) => [
          <th key={`${id} lost`} scope="col" className="num">
            Lost
          </th>,
          <th key={`${id} reduced`} scope="col" className="num">
            Reduced
          </th>,
        ])}
      </tr>
    </thead>
  );
}

/** Two cells; where fewer services are lost than in the current layout the figure is set strong and says so. */
function CountCells({ counts, against }: { counts: Counts | undefined; against: Counts | undefined }) {
  if (!counts) {
    return (
      <td className="num soft" colSpan={2}>
        cannot happen
      </td>
    );
  }
  const isBetter = against !== undefined && counts.lost < against.lost;
  const isWorse = against !== undefined && counts.lost > against.lost;
  return (
    <>
      <td className="num">
        {isBetter || isWorse ? (
          <span className={`grade grade--${isBetter ? 'full' : 'lost'}`}>
            <span aria-hidden="true">{isBetter ? '▾' : '▴'}</span>
            <span className="sr-only">{isBetter ? 'fewer: ' : 'more: '}</span> {counts.lost}
          </span>
        ) : (
          counts.lost
        )}
      </td>
      <td className="num">{counts.reduced}</td>
    </>
  );
}

function WideRow({
  name,
  layouts,
  text,
}: {
  name: string;
  layouts: readonly LayoutNumbers[];
  text: (layout: LayoutNumbers) => string;
}) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {layouts.map((layout) => (
        <td key={layout.id} className="num" colSpan={2}>
          {text(layout)}
        </td>
      ))}
    </tr>
  );
}
