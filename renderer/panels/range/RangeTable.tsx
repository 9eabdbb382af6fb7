import { useRef } from 'react';
import { Button } from 'react-aria-components';
import type { Project } from '../../../core/model/project.ts';
import type { DistanceBand, RangeResult } from '../../../core/reach/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { bareNumber, symbolOf } from '../pathLoss/figures.ts';
import { LIMIT_WORDS, type RangeGroup } from './groups.ts';
import { type DistanceScale, distanceScale, farthestKm } from './scale.ts';
import { barSummary } from './summary.ts';

const COLUMNS = 6;

/** Every station of one radio: the numbers, and below them a bar on the scale that all stations share. */
export function RangeTable({
  project,
  group,
  chosenId,
  onChoose,
}: {
  project: Project;
  group: RangeGroup;
  chosenId: string | null;
  onChoose: (stationId: string) => void;
}) {
  const preferences = useApp((state) => state.preferences);
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const scale = distanceScale(farthestKm(group.results), 4, width - 12, preferences);
  const unit = symbolOf('km', preferences);
  return (
    <div ref={box} className="table-scroll">
      <table className="table range-table">
        <Heads unit={unit} />
        {group.results.map((result) => (
          <StationRows
            key={result.id}
            result={result}
            name={nameOf(project, result)}
            isChosen={result.stationId === chosenId}
            onChoose={() => onChoose(result.stationId)}
            scale={scale}
            width={width}
          />
        ))}
        <tfoot>
          <tr>
            <td colSpan={COLUMNS}>
              <Axis scale={scale} width={width} unit={unit} />
            </td>
          </tr>
        </tfoot>
      </table>
      <Key />
    </div>
  );
}

function Heads({ unit }: { unit: string }) {
  return (
    <thead>
      <tr>
        <th scope="col">To</th>
        <th scope="col" className="num">
          Dependable {unit}
        </th>
        <th scope="col" className="num">
          Typical {unit}
        </th>
        <th scope="col" className="num">
          Horizon {unit}
        </th>
        <th scope="col" className="num">
          Feeder costs {unit}
        </th>
        <th scope="col">Gives out first</th>
      </tr>
    </thead>
  );
}

const nameOf = (project: Project, result: RangeResult): string =>
  project.stations.find(({ id }) => id === result.stationId)?.name ?? result.stationId;

function StationRows({
  result,
  name,
  isChosen,
  onChoose,
  scale,
  width,
}: {
  result: RangeResult;
  name: string;
  isChosen: boolean;
  onChoose: () => void;
  scale: DistanceScale;
  width: number;
}) {
  const preferences = useApp((state) => state.preferences);
  const km = (value: number): string => bareNumber(value, 'km', preferences, 1);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the name in the row is a button for the same
    <tbody className={isChosen ? 'is-chosen' : ''} onClick={onChoose}>
      <tr className={isChosen ? 'is-selected' : ''}>
        <th scope="row">
          <Button className="button link" aria-pressed={isChosen} onPress={onChoose}>
            {name}
          </Button>
        </th>
        <Band band={result.dependable} isStrong />
        <Band band={result.typical} />
        <td className="num">{km(result.horizonKm)}</td>
        <FeederCost result={result} />
        <td>{LIMIT_WORDS[result.limitedBy]}</td>
      </tr>
      <tr className={isChosen ? 'bar-row is-selected' : 'bar-row'}>
        <td colSpan={COLUMNS}>
          <Bar result={result} name={name} scale={scale} width={width} />
        </td>
      </tr>
    </tbody>
  );
}

function FeederCost({ result }: { result: RangeResult }) {
  const preferences = useApp((state) => state.preferences);
  const km = (value: number): string => bareNumber(value, 'km', preferences, 1);
  if (result.pathId === null) return <td className="num">–</td>;
  return (
    <td className="num">
      {km(result.feederCostDependableKm)}
      <span className="band">{km(result.feederCostTypicalKm)} of typical</span>
    </td>
  );
}

function Band({ band, isStrong = false }: { band: DistanceBand; isStrong?: boolean }) {
  const preferences = useApp((state) => state.preferences);
  const km = (value: number): string => bareNumber(value, 'km', preferences, 1);
  return (
    <td className="num">
      {isStrong ? <strong>{km(band.nominalKm)}</strong> : km(band.nominalKm)}
      <span className="band">
        {km(band.lowKm)}–{km(band.highKm)}
      </span>
    </td>
  );
}

const BAR = 24;

function Bar({
  result,
  name,
  scale,
  width,
}: {
  result: RangeResult;
  name: string;
  scale: DistanceScale;
  width: number;
}) {
  const { rich } = useFormat();
  const { dependable, typical, horizonKm } = result;
  const { x } = scale;
  return (
    <svg className="range-bar" width={width} height={BAR} role="img" aria-label={rich(barSummary(result, name))}>
      {scale.ticks.map((tick) => (
        <path key={tick.shown} className="range-grid" d={`M${tick.x} 0V${BAR}`} />
      ))}
      <rect className="range-solid" x={x(0)} y={3} width={x(dependable.nominalKm) - x(0)} height={7} />
      <path className="range-whisker" d={whisker(x(dependable.lowKm), x(dependable.highKm), 6.5)} />
      <rect
        className="range-open"
        x={x(typical.lowKm)}
        y={13.5}
        width={Math.max(1, x(typical.highKm) - x(typical.lowKm))}
        height={7}
      />
      <path className="range-nominal" d={`M${x(typical.nominalKm)} 12V22`} />
      <path className="range-horizon" d={`M${x(horizonKm)} 0V${BAR}`} />
      <path className="range-flag" d={`M${x(horizonKm) - 4} 0h8l-4 5z`} />
    </svg>
  );
}

const whisker = (from: number, to: number, y: number): string =>
  `M${from} ${y}H${to}M${from} ${y - 2.5}v5M${to} ${y - 2.5}v5`;

function Axis({ scale, width, unit }: { scale: DistanceScale; width: number; unit: string }) {
  const preferences = useApp((state) => state.preferences);
  const last = scale.ticks.length - 1;
  const digits = scale.ticks.every(({ shown }) => Number.isInteger(shown)) ? 0 : 1;
  return (
    <svg className="range-bar" width={width} height={18} aria-hidden="true">
      {scale.ticks.map((tick, index) => {
        const text = tick.shown.toFixed(digits).replace('.', preferences.decimal);
        return (
          <text
            key={tick.shown}
            className="range-tick"
            x={tick.x}
            y={13}
            textAnchor={index === 0 ? 'start' : index === last ? 'end' : 'middle'}
          >
            {index === last ? `${text} ${unit}` : text}
          </text>
        );
      })}
    </svg>
  );
}

function Key() {
  return (
    <p className="small soft range-key">
      <span>
        <svg width={26} height={12} aria-hidden="true">
          <rect className="range-solid" x={0} y={2.5} width={18} height={7} />
          <path className="range-whisker" d={whisker(12, 24, 6)} />
        </svg>{' '}
        dependable and its band
      </span>
      <span>
        <svg width={22} height={12} aria-hidden="true">
          <rect className="range-open" x={1} y={2.5} width={20} height={7} />
          <path className="range-nominal" d="M11 1V11" />
        </svg>{' '}
        typical, band and middle
      </span>
      <span>
        <svg width={10} height={14} aria-hidden="true">
          <path className="range-horizon" d="M5 0V14" />
          <path className="range-flag" d="M1 0h8l-4 5z" />
        </svg>{' '}
        horizon
      </span>
    </p>
  );
}
