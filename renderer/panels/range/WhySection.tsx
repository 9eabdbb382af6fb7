import { useState } from 'react';
import type { Project } from '../../../core/model/project.ts';
import type { RangeExplanation, WaySum } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';
import { Chips } from './Chips.tsx';
import { NoiseFacts } from './NoiseFacts.tsx';
import { SumTable } from './SumTable.tsx';
import { WAY_WORDS, waysOf } from './sums.ts';
import { UncertaintyBars } from './UncertaintyBars.tsx';

/** The chain behind a range, both ways, which of them limits, what makes the band wide, and what noise costs. */
export function WhySection({
  project,
  explained,
  stationName,
}: {
  project: Project;
  explained: RangeExplanation;
  stationName: string;
}) {
  const ways = waysOf(explained);
  const [direction, setDirection] = useState<WaySum['direction'] | null>(null);
  const way = ways.find((each) => each.direction === direction) ?? ways[0];
  if (!way) return null;
  return (
    <>
      {ways.length > 1 ? (
        <Chips
          label="Which way"
          isLabelHidden
          options={ways.map((each) => ({ id: each.direction, name: WAY_WORDS[each.direction] }))}
          value={way.direction}
          onChange={setDirection}
        />
      ) : null}
      <SumTable way={way} />
      <Outcome way={way} marginDb={explained.range.marginDb} />
      <Limit ways={ways} stationName={stationName} />
      <UncertaintyBars explained={explained} />
      {explained.noise ? <NoiseFacts noise={explained.noise} margin={project.settings.margin} /> : null}
    </>
  );
}

function Outcome({ way, marginDb: margin }: { way: WaySum; marginDb: number }) {
  const { quantity } = useFormat();
  return (
    <p className="small">
      Over this sea {quantity(way.maxLossDb, 'dB', 1)} are used up at {quantity(way.typical.nominalKm, 'km')}, the
      typical range this way; {quantity(way.maxLossDb - margin, 'dB', 1)}, with the margin of{' '}
      {quantity(margin, 'dB', 1)} kept back, at {quantity(way.dependable.nominalKm, 'km')}, the dependable one.
    </p>
  );
}

function Limit({ ways, stationName }: { ways: readonly WaySum[]; stationName: string }) {
  const { quantity } = useFormat();
  const [first, second] = ways;
  if (!first) return null;
  if (!second) {
    return (
      <p className="small">
        Only one way counts: {first.direction === 'receive' ? 'this set does not transmit' : 'it only transmits'}.
      </p>
    );
  }
  const apartDb = second.maxLossDb - first.maxLossDb;
  const sentence =
    first.direction === 'transmit'
      ? `${stationName} loses you before you lose them`
      : `You lose ${stationName} before they lose you`;
  return (
    <p className="small">
      <strong>{sentence}</strong>
      {apartDb < 0.05 ? ', by next to nothing.' : `: the other way has ${quantity(apartDb, 'dB', 1)} more in hand.`}
    </p>
  );
}
