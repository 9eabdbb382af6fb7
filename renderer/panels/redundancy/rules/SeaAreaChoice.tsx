import { setRedundancy } from '../../../../core/edit/redundancy.ts';
import { redundancySettingsSchema } from '../../../../core/model/project.ts';
import { Choice } from '../../../app/Choice.tsx';
import { useApp, useAppStore } from '../../../store/context.ts';
import { shownProject } from '../../../store/store.ts';

const SEA_AREAS = [
  {
    id: 'A1',
    name: 'A1: in VHF reach of the coast',
    note: 'Within VHF cover of a coast station that takes digital calls',
  },
  { id: 'A2', name: 'A2: in MF reach of the coast', note: 'Beyond A1, within MF cover of such a station' },
  { id: 'A3', name: 'A3: in cover of satellites', note: 'Beyond those, within cover of the satellites' },
  { id: 'A4', name: 'A4: near the poles', note: 'Beyond all of them' },
] as const;

/** Where the boat goes: decides by what the shore is reached. */
export function SeaAreaChoice() {
  const store = useAppStore();
  const { seaArea } = useApp((state) => shownProject(state).settings.redundancy);
  return (
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
  );
}
