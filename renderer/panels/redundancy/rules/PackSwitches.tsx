import { useState } from 'react';
import { setRedundancy } from '../../../../core/edit/redundancy.ts';
import type { Project } from '../../../../core/model/project.ts';
import { PACKS } from '../../../../core/rulePacks/packs.ts';
import type { RulePack } from '../../../../core/rulePacks/types.ts';
import { useAppStore } from '../../../store/context.ts';
import { SeaAreaChoice } from './SeaAreaChoice.tsx';

/** Which packs are on, and where the boat goes for those that ask. */
export function PackSwitches({ project }: { project: Project }) {
  const store = useAppStore();
  const { rulePacks } = project.settings.redundancy;
  const onCount = PACKS.filter(({ id }) => rulePacks.includes(id)).length;
  // Folded away once there is something to read, but not under the hand of who is ticking.
  const [isOpen, setOpen] = useState(onCount === 0);
  const turn = (pack: RulePack, isOn: boolean): void => {
    const label = `${pack.name}: ${isOn ? 'on' : 'off'}`;
    store.getState().edit(label, (before) => {
      const others = before.settings.redundancy.rulePacks.filter((id) => id !== pack.id);
      return setRedundancy(before, { rulePacks: isOn ? [...others, pack.id] : others });
    });
  };
  return (
    <>
      <details className="pack-fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          Packs <span className="soft">({onCount === 0 ? 'none on' : `${onCount} on`})</span>
        </summary>
        <fieldset className="pack-switches">
          <legend className="sr-only">Packs</legend>
          {PACKS.map((pack) => (
            <PackSwitch key={pack.id} pack={pack} isOn={rulePacks.includes(pack.id)} onTurn={turn} />
          ))}
        </fieldset>
      </details>
      {PACKS.some((pack) => pack.asksSeaArea && rulePacks.includes(pack.id)) ? <SeaAreaChoice /> : null}
    </>
  );
}

function PackSwitch({
  pack,
  isOn,
  onTurn,
}: {
  pack: RulePack;
  isOn: boolean;
  onTurn: (pack: RulePack, isOn: boolean) => void;
}) {
  return (
    <label className="pack-switch">
      <input type="checkbox" checked={isOn} onChange={(event) => onTurn(pack, event.target.checked)} />
      <span>
        <span className="pack-name">{pack.name}</span>
        <span className="block small soft">{pack.edition}</span>
        <span className="block small soft">{pack.binds}</span>
      </span>
    </label>
  );
}
