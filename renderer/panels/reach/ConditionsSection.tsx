import { setSettings } from '../../../core/edit/stations.ts';
import type { Conditions, Project } from '../../../core/model/project.ts';
import { LIGHTNING_CHOICES, MONTHS, NOISE_CHOICES } from '../../../core/reach/conditionWords.ts';
import { Choice } from '../../app/Choice.tsx';
import { useAppStore } from '../../store/context.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { CONDITION_FIELDS, conditionsSummary } from './conditions.ts';
import './reach.css';

/** What no drawing shows: noise, ionosphere, place and month. They belong to the project and are printed with it. */
export function ConditionsSection({ project }: { project: Project }) {
  const { conditions } = project.settings;
  return (
    <section className="panel-section">
      <details className="more">
        <summary>Conditions: {conditionsSummary(conditions)}</summary>
        <ConditionsFields conditions={conditions} />
      </details>
    </section>
  );
}

const MONTH_CHOICES = MONTHS.map((name, index) => ({ id: String(index + 1), name }));

/** The fields themselves, for the panel and for the settings of the project. */
export function ConditionsFields({ conditions }: { conditions: Conditions }) {
  const store = useAppStore();
  const set = (label: string, change: Partial<Conditions>): boolean =>
    store
      .getState()
      .edit(label, (project) => setSettings(project, { conditions: { ...project.settings.conditions, ...change } }));
  return (
    <div className="conditions">
      <Choice
        label="Man-made noise"
        options={NOISE_CHOICES}
        value={conditions.noise}
        onChange={(id) => {
          const chosen = NOISE_CHOICES.find((each) => each.id === id);
          if (chosen) set(`Noise: ${chosen.name}`, { noise: chosen.id });
        }}
      />
      <Choice
        label="Lightning noise"
        options={LIGHTNING_CHOICES}
        value={conditions.lightning}
        onChange={(id) => {
          const chosen = LIGHTNING_CHOICES.find((each) => each.id === id);
          if (chosen) set(`Lightning noise: ${chosen.name}`, { lightning: chosen.id });
        }}
      />
      {CONDITION_FIELDS.map(({ key, ...field }) => (
        <QuantityField
          key={key}
          {...field}
          value={conditions[key]}
          onCommit={(value) => value !== null && set(`Conditions: ${field.label}`, { [key]: value })}
        />
      ))}
      <Choice
        label="Month"
        options={MONTH_CHOICES}
        value={String(conditions.month)}
        onChange={(id) => set(`Month: ${MONTHS[Number(id) - 1] ?? id}`, { month: Number(id) })}
      />
      <p className="small soft conditions-note">
        Ionosonde pages and monthly predictions of the public space-weather services give foF2 and M(3000)F2 for a
        region. Take the monthly median for planning and today’s figure for today. Noise categories after Recommendation
        ITU-R P.372.
      </p>
    </div>
  );
}
