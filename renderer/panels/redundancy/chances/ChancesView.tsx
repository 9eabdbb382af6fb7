import { useState } from 'react';
import { setRedundancy } from '../../../../core/edit/redundancy.ts';
import type { ServiceId } from '../../../../core/model/services.ts';
import type { FailureStudy, ServiceRisk } from '../../../../core/redundancy/types.ts';
import { serviceOf } from '../../../../core/report/words.ts';
import { useApp, useAppStore } from '../../../store/context.ts';
import { useStudy } from '../../../store/derived.ts';
import { shownProject } from '../../../store/store.ts';
import { QuantityField } from '../../../ui/QuantityField.tsx';
import { ChanceForm } from './ChanceForm.tsx';
import { useChanceText } from './chanceText.ts';
import { RiskTable } from './RiskTable.tsx';

/** How often each service would be down on a passage, and which thing matters most to it. */
export function ChancesView() {
  const study = useStudy();
  const [chosen, choose] = useState<ServiceId | null>(null);
  const [thingId, setThingId] = useState<string | null>(null);
  const risks = study.cuts.map(({ serviceId }) => study.riskOf(serviceId));
  const shown = risks.find(({ serviceId }) => serviceId === chosen) ?? risks.find(({ nominal }) => nominal < 1);
  const row = shown?.rows.find(({ id }) => id === thingId);
  return (
    <>
      <section className="panel-section">
        <h3 className="heading">How often each service would be down</h3>
        <p className="small soft">
          At some time of the passage, nothing being mended under way. The sum is exact, but for those with ≈, of which
          only bounds are known; what goes into it is nearly always an assumption, so read the span, not the middle, and
          compare layouts rather than trust a figure.
        </p>
        <PassageField />
        <RiskBars study={study} risks={risks} shown={shown} onShow={choose} />
      </section>
      {shown && shown.nominal < 1 ? (
        <section className="panel-section">
          <h3 className="heading">{serviceOf(shown.serviceId).name}: what it hangs on most</h3>
          <RiskTable risk={shown} chosenId={row?.id ?? null} onChoose={setThingId} />
          {row ? <ChanceForm key={JSON.stringify(row.chance)} chance={row.chance} /> : null}
        </section>
      ) : null}
    </>
  );
}

function PassageField() {
  const store = useAppStore();
  const { passageDays } = useApp((state) => shownProject(state).settings.redundancy);
  return (
    <QuantityField
      label="Length of the passage, days"
      value={passageDays}
      unit="count"
      digits={0}
      min={0.1}
      max={400}
      onCommit={(days) =>
        days !== null &&
        store.getState().edit('Length of the passage', (before) => setRedundancy(before, { passageDays: days }))
      }
    />
  );
}

function RiskBars({
  study,
  risks,
  shown,
  onShow,
}: {
  study: FailureStudy;
  risks: readonly ServiceRisk[];
  shown: ServiceRisk | undefined;
  onShow: (id: ServiceId) => void;
}) {
  const { chanceText, intervalText } = useChanceText();
  return (
    <table className="table risks">
      <thead>
        <tr>
          <th scope="col">Service</th>
          <th scope="col">Span, 0.001 to 100 %</th>
          <th scope="col" className="num">
            Chance of being down
          </th>
        </tr>
      </thead>
      <tbody>
        {risks.map((risk) => (
          <tr key={risk.serviceId} className={risk === shown ? 'is-selected' : ''}>
            <th scope="row">
              <button
                type="button"
                className="link"
                aria-pressed={risk === shown}
                onClick={() => onShow(risk.serviceId)}
              >
                {serviceOf(risk.serviceId).name}
              </button>
            </th>
            {study.cuts.find(({ serviceId }) => serviceId === risk.serviceId)?.lostFromStart ? (
              <td colSpan={2} className="num soft">
                lost as drawn
              </td>
            ) : (
              <>
                <td>
                  <SpanBar risk={risk} />
                </td>
                <td className="num">
                  {risk.isExact ? '' : '≈ '}
                  {chanceText(risk.nominal)} <span className="block small soft">{intervalText(risk)}</span>
                </td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const LEAST = 1e-5;

/** From low to high on a scale of decades, with a mark at the middle. */
function SpanBar({ risk: { low, nominal, high } }: { risk: ServiceRisk }) {
  const at = (chance: number): number => 100 * (1 - Math.log10(Math.max(LEAST, chance)) / Math.log10(LEAST));
  return (
    <svg className="span-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      {[0, 20, 40, 60, 80, 100].map((x) => (
        <line key={x} x1={x} x2={x} y1={0} y2={10} className="span-decade" />
      ))}
      <rect x={at(low)} width={Math.max(0.8, at(high) - at(low))} y={3.5} height={3} className="span-range" />
      <rect x={at(nominal) - 0.6} width={1.2} y={1} height={8} className="span-middle" />
    </svg>
  );
}
