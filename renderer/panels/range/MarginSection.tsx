import { setSettings } from '../../../core/edit/stations.ts';
import { marginDb } from '../../../core/model/margin.ts';
import type { HorizonRule, Project } from '../../../core/model/project.ts';
import { Choice } from '../../app/Choice.tsx';
import { useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { HORIZON_RULES } from './groups.ts';
import { MarginItems } from './MarginItems.tsx';

/** What the ranges are reckoned with: the horizon rule and the real-life margin, item by item. */
export function MarginSection({ project }: { project: Project }) {
  const store = useAppStore();
  const { quantity } = useFormat();
  const { margin, horizonRule } = project.settings;
  const rule = HORIZON_RULES.find(({ id }) => id === horizonRule);
  const setRule = (id: string): void => {
    const chosen = HORIZON_RULES.find((each) => each.id === id);
    if (!chosen) return;
    const next: HorizonRule = chosen.id;
    store.getState().edit(`Horizon by ${chosen.name}`, (current) => setSettings(current, { horizonRule: next }));
  };
  return (
    <section className="panel-section">
      <h3 className="heading">What the ranges are reckoned with</h3>
      <Choice label="Horizon rule" options={HORIZON_RULES} value={horizonRule} onChange={setRule} />
      <p className="small soft">
        {rule?.note}. The rule moves the landmark only; the ranges come from the power budget.
      </p>
      <details className="more">
        <summary>Real-life margin: {quantity(marginDb(margin), 'dB', 1)} between typical and dependable</summary>
        <MarginItems margin={margin} />
      </details>
    </section>
  );
}
