import { Button } from 'react-aria-components';
import { setSettings } from '../../core/edit/stations.ts';
import type { HorizonRule, Settings } from '../../core/model/project.ts';
import { lossOfPercentDb, lostPercent } from '../../core/rf/decibels.ts';
import { Choice } from '../app/Choice.tsx';
import { HORIZON_RULES } from '../panels/range/groups.ts';
import { MarginItems } from '../panels/range/MarginItems.tsx';
import { ConditionsFields } from '../panels/reach/ConditionsSection.tsx';
import { useApp, useAppStore } from '../store/context.ts';
import { QuantityField } from '../ui/QuantityField.tsx';
import { useFormat } from '../ui/text.ts';
import { DialogFrame, type DialogProps } from './DialogFrame.tsx';
import './dialogs.css';

/** Limits and assumptions that belong to this project and are printed with it. */
export function SettingsDialog(props: DialogProps) {
  return (
    <DialogFrame {...props} title="Settings of this project" isDismissable>
      {(close) => <SettingsForm close={close} />}
    </DialogFrame>
  );
}

function SettingsForm({ close }: { close: () => void }) {
  const settings = useApp((state) => state.project.settings);
  return (
    <>
      <div className="dialog-body settings">
        <div className="settings-column">
          <Limits settings={settings} />
          <fieldset>
            <legend className="heading">Conditions</legend>
            <p className="small soft">Noise, ionosphere, place and month: what HF and satellites are reckoned with.</p>
            <ConditionsFields conditions={settings.conditions} />
          </fieldset>
        </div>
        <fieldset>
          <legend className="heading">Real-life margin</legend>
          <p className="small soft">
            What is taken off between the typical range and the dependable one. The sizes are judgement; change them to
            yours.
          </p>
          <MarginItems margin={settings.margin} />
        </fieldset>
      </div>
      <div className="dialog-actions">
        <p className="small soft settings-note">
          Each change counts at once and can be undone. Units, decimal mark and theme are in the View menu.
        </p>
        <Button className="button button--primary" onPress={close}>
          Done
        </Button>
      </div>
    </>
  );
}

function Limits({ settings }: { settings: Settings }) {
  const store = useAppStore();
  const { quantity } = useFormat();
  const rule = HORIZON_RULES.find(({ id }) => id === settings.horizonRule);
  const change = (label: string, values: Partial<Settings>): boolean =>
    store.getState().edit(label, (project) => setSettings(project, values));
  return (
    <fieldset>
      <legend className="heading">Limits and rules</legend>
      <QuantityField
        label="Feeder loss limit, share of the power lost"
        value={lostPercent(settings.feederLossLimitDb)}
        unit="percent"
        digits={1}
        min={1}
        max={98}
        hint={`${quantity(settings.feederLossLimitDb, 'dB')}. 40 % is the racing rule’s limit.`}
        onCommit={(percent) =>
          percent !== null && change('Feeder limit changed', { feederLossLimitDb: lossOfPercentDb(percent) })
        }
      />
      <QuantityField
        label="Voltage drop limit"
        value={settings.voltageDropLimitPercent}
        unit="percent"
        digits={1}
        min={0.1}
        max={20}
        hint="3 % is the usual limit for electronics."
        onCommit={(percent) =>
          percent !== null && change('Voltage drop limit changed', { voltageDropLimitPercent: percent })
        }
      />
      <Choice
        label="Horizon"
        options={HORIZON_RULES}
        value={settings.horizonRule}
        onChange={(id) => change('Horizon rule changed', { horizonRule: id as HorizonRule })}
      />
      <p className="small soft">{rule?.note}. A landmark beside the ranges, not a limit.</p>
    </fieldset>
  );
}
