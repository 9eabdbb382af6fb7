import { Button } from 'react-aria-components';
import { setSettings } from '../../core/edit/stations.ts';
import { marginDb } from '../../core/model/margin.ts';
import type { HorizonRule, Settings } from '../../core/model/project.ts';
import { lossOfPercentDb, lostPercent } from '../../core/rf/decibels.ts';
import { Choice } from '../app/Choice.tsx';
import { useApp, useAppStore } from '../store/context.ts';
import { QuantityField } from '../ui/QuantityField.tsx';
import { useFormat } from '../ui/text.ts';
import { DialogFrame, type DialogProps } from './DialogFrame.tsx';
import './dialogs.css';

const HORIZON_RULES: readonly { readonly id: HorizonRule; readonly name: string; readonly note: string }[] = [
  { id: 'four-thirds-earth', name: '4/3 earth', note: '2.226 (√h1 + √h2) NM, heights in m; standard refraction' },
  { id: 'trade-2.25', name: 'Trade rule 2.25', note: '2.25 (√h1 + √h2) NM; common practice' },
  { id: 'trade-2.2', name: 'Trade rule 2.2', note: '2.2 (√h1 + √h2) NM; as taught on courses' },
  { id: 'geometric', name: 'Geometric', note: '1.927 (√h1 + √h2) NM; no refraction' },
];

/** Limits and assumptions that belong to this project and are printed with it. */
export function SettingsDialog(props: DialogProps) {
  return (
    <DialogFrame {...props} title="Settings of this project">
      {(close) => <SettingsForm close={close} />}
    </DialogFrame>
  );
}

function SettingsForm({ close }: { close: () => void }) {
  const store = useAppStore();
  const { quantity } = useFormat();
  const settings = useApp((state) => state.project.settings);
  const change = (label: string, values: Partial<Settings>): void => {
    store.getState().edit(label, (project) => setSettings(project, values));
  };
  return (
    <>
      <div className="dialog-body stack">
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
          onChange={(rule) => change('Horizon rule changed', { horizonRule: rule as HorizonRule })}
        />
        <fieldset className="settings-margin">
          <legend className="heading">Real-life margin, {quantity(marginDb(settings.margin), 'dB', 1)} in all</legend>
          <p className="small soft">
            What is taken off between the typical range and the dependable one. The sizes are judgement; change them to
            yours.
          </p>
          {settings.margin.map((item) => (
            <QuantityField
              key={item.id}
              label={item.label}
              value={item.lossDb}
              unit="dB"
              digits={1}
              min={0}
              max={40}
              hint={item.source}
              onCommit={(lossDb) =>
                lossDb !== null &&
                change(`Margin changed: ${item.label}`, {
                  margin: settings.margin.map((known) => (known.id === item.id ? { ...known, lossDb } : known)),
                })
              }
            />
          ))}
        </fieldset>
      </div>
      <div className="dialog-actions">
        <Button className="button button--primary" onPress={close}>
          Done
        </Button>
      </div>
    </>
  );
}
