import { setRedundancy } from '../../../../core/edit/redundancy.ts';
import { type Project, redundancySettingsSchema } from '../../../../core/model/project.ts';
import { PACKS } from '../../../../core/rulePacks/packs.ts';
import type { RulePack } from '../../../../core/rulePacks/types.ts';
import { Choice } from '../../../app/Choice.tsx';
import { useAppStore } from '../../../store/context.ts';

const SEA_AREAS = [
  { id: 'A1', name: 'A1', note: 'Within VHF cover of a coast station that takes digital calls' },
  { id: 'A2', name: 'A2', note: 'Beyond A1, within MF cover of such a station' },
  { id: 'A3', name: 'A3', note: 'Beyond those, within cover of the satellites' },
  { id: 'A4', name: 'A4', note: 'Beyond all of them: near the poles' },
] as const;

/** Which packs are on, and where the boat goes for those that ask. */
export function PackSwitches({ project }: { project: Project }) {
  const store = useAppStore();
  const { rulePacks, seaArea } = project.settings.redundancy;
  const turn = (pack: RulePack, isOn: boolean): void => {
    const label = `${pack.name}: ${isOn ? 'on' : 'off'}`;
    store.getState().edit(label, (before) => {
      const others = before.settings.redundancy.rulePacks.filter((id) => id !== pack.id);
      return setRedundancy(before, { rulePacks: isOn ? [...others, pack.id] : others });
    });
  };
  return (
    <>
      <fieldset className="pack-switches">
        <legend>Packs</legend>
        {PACKS.map((pack) => (
          <label key={pack.id} className="pack-switch">
            <input
              type="checkbox"
              checked={rulePacks.includes(pack.id)}
              onChange={(event) => turn(pack, event.target.checked)}
            />
            <span>
              <span className="pack-name">{pack.name}</span>
              <span className="block small soft">{pack.edition}</span>
              <span className="block small soft">{pack.binds}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {PACKS.some((pack) => pack.asksSeaArea && rulePacks.includes(pack.id)) ? (
        <Choice
          label="Sea area the boat goes to"
          options={SEA_AREAS}
          value={seaArea}
          onChange={(id) =>
            store
              .getState()
              .edit(`Sea area ${id}`, (before) =>
                setRedundancy(before, { seaArea: redundancySettingsSchema.shape.seaArea.unwrap().parse(id) }),
              )
          }
        />
      ) : null}
    </>
  );
}
