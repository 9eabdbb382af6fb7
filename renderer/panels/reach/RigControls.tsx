import { ToggleButton } from 'react-aria-components';
import type { Project } from '../../../core/model/project.ts';
import type { RigState } from '../../../core/siting/types.ts';
import { useFormat } from '../../ui/text.ts';
import { Slider } from '../range/Slider.tsx';
import { heelWords } from '../range/trial.ts';

/** Sails, boom and heel to try; without a boom there is only heel. */
export function RigControls({
  project,
  rig,
  onChange,
}: {
  project: Project;
  rig: RigState;
  onChange: (rig: RigState) => void;
}) {
  const { rich, quantity } = useFormat();
  const hasBoom = project.boat.masts.some(({ boomZM }) => boomZM !== null);
  const set = (change: Partial<RigState>): void => onChange({ ...rig, ...change });
  const boomWords =
    rig.boomDeg === 0
      ? 'amidships'
      : `${quantity(Math.abs(rig.boomDeg), 'degree')} to ${rig.boomDeg > 0 ? 'starboard' : 'port'}`;
  return (
    <fieldset className="sky-rig">
      <legend className="label">Try (not saved)</legend>
      {hasBoom ? (
        <>
          <SailButtons rig={rig} onChange={set} />
          <Slider
            label="Boom"
            value={rig.boomDeg}
            words={boomWords}
            min={-80}
            max={80}
            onChange={(boomDeg) => set({ boomDeg })}
          />
        </>
      ) : null}
      <Slider
        label="Heel"
        value={rig.heelDeg}
        words={rich(heelWords(rig.heelDeg))}
        min={-45}
        max={45}
        onChange={(heelDeg) => set({ heelDeg })}
      />
    </fieldset>
  );
}

function SailButtons({ rig, onChange }: { rig: RigState; onChange: (change: Partial<RigState>) => void }) {
  return (
    <div className="row">
      <ToggleButton
        isSelected={rig.mainsail === 'set'}
        onChange={(isSet) => onChange({ mainsail: isSet ? 'set' : 'stowed' })}
      >
        Mainsail set
      </ToggleButton>
      <ToggleButton
        isSelected={rig.headsail === 'set'}
        onChange={(isSet) => onChange({ headsail: isSet ? 'set' : 'furled' })}
      >
        Headsail set
      </ToggleButton>
    </div>
  );
}
