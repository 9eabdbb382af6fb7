import type { HfBand, HfDay } from '../../../core/reach/types.ts';
import { useApp } from '../../store/context.ts';
import { bareNumber } from '../pathLoss/figures.ts';
import { bandList, bandsAt, clock } from './hfWords.ts';

/** The same day in numbers, hour by hour. */
export function HfDayTable({ day, bands }: { day: HfDay; bands: readonly HfBand[] }) {
  const preferences = useApp((state) => state.preferences);
  const mhz = (value: number): string => bareNumber(value, 'MHz', preferences, 1);
  return (
    <details className="more">
      <summary>The day hour by hour, in numbers</summary>
      <div className="table-scroll">
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Hour</th>
              <th scope="col" className="num">
                foF2 MHz
              </th>
              <th scope="col" className="num">
                foE MHz
              </th>
              <th scope="col" className="num">
                MUF MHz
              </th>
              <th scope="col" className="num">
                Working MHz
              </th>
              <th scope="col">Carries, best first</th>
            </tr>
          </thead>
          <tbody>
            {day.hours.map((hour) => {
              const { best, open, ground } = bandsAt(day, bands, hour.hour);
              const names = [...(best === null ? [] : [best]), ...open, ...ground];
              return (
                <tr key={hour.hour}>
                  <th scope="row">{clock(hour.hour)}</th>
                  <td className="num">{mhz(hour.foF2Mhz)}</td>
                  <td className="num">{mhz(hour.foEMhz)}</td>
                  <td className="num">{mhz(hour.mufMhz)}</td>
                  <td className="num">{mhz(hour.workingMhz)}</td>
                  <td>{names.length === 0 ? 'none' : bandList(names)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
}
