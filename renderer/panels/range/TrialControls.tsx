import { Button } from 'react-aria-components';
import { AT_REST, type RangeResult, type TrialState } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';
import { BoatSection } from './BoatSection.tsx';
import { Chips } from './Chips.tsx';
import { Slider } from './Slider.tsx';
import {
  BEARINGS,
  changeWords,
  heelWords,
  isTried,
  MOST_HEEL_DEG,
  MOST_ROLL_DEG,
  POWERS,
  rollWords,
  TIMES,
  trialWords,
} from './trial.ts';

/** Lean the boat, turn the power down, ask for more of the time: everything above follows at once, and nothing is saved. */
export function TrialControls({
  state,
  hasLowPower,
  onChange,
}: {
  state: TrialState;
  hasLowPower: boolean;
  onChange: (state: TrialState) => void;
}) {
  const { rich } = useFormat();
  const set = (change: Partial<TrialState>): void => onChange({ ...state, ...change });
  return (
    <section className="panel-section trial">
      <div className="panel-head">
        <h3 className="heading">Try</h3>
        {isTried(state) ? (
          <Button className="button trial-back" onPress={() => onChange(AT_REST)}>
            Back to upright
          </Button>
        ) : (
          <span className="small soft">not saved with the boat</span>
        )}
      </div>
      <div className="trial-lean">
        <BoatSection heelDeg={state.heelDeg} rollDeg={state.rollDeg} />
        <div className="trial-slides">
          <Slider
            label="Heel"
            value={state.heelDeg}
            words={rich(heelWords(state.heelDeg))}
            min={-MOST_HEEL_DEG}
            max={MOST_HEEL_DEG}
            onChange={(heelDeg) => set({ heelDeg })}
          />
          <Slider
            label="Roll"
            value={state.rollDeg}
            words={rich(rollWords(state.rollDeg))}
            min={0}
            max={MOST_ROLL_DEG}
            onChange={(rollDeg) => set({ rollDeg })}
          />
        </div>
      </div>
      <div className="trial-chips">
        <Chips
          label="The other station lies"
          options={BEARINGS}
          value={state.bearingDeg}
          onChange={(bearingDeg) => set({ bearingDeg })}
        />
        {hasLowPower ? (
          <Chips label="Power" options={POWERS} value={state.power} onChange={(power) => set({ power })} />
        ) : null}
        <Chips
          label="Holds for this much of the time"
          options={TIMES}
          value={state.timePercent}
          onChange={(timePercent) => set({ timePercent })}
        />
      </div>
    </section>
  );
}

/** What is tried and what it did, read out as it changes; nothing at rest. */
export function TrialOutcome({
  state,
  upright,
  tried,
}: {
  state: TrialState;
  upright: RangeResult;
  tried: RangeResult;
}) {
  const { rich } = useFormat();
  return (
    <p className="trial-outcome" role="status">
      {isTried(state) ? (
        <>
          <strong>{rich(trialWords(state))}:</strong> {rich(changeWords(upright, tried))}.
        </>
      ) : null}
    </p>
  );
}
