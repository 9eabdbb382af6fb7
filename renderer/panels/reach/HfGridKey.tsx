import { HourGlyph } from './HourGlyph.tsx';
import { STATE_WORDS, STATES } from './hfWords.ts';

const [BOX_W, BOX_H] = [16, 12];

/** What the cells and the two lines say. */
export function HfGridKey({ patternId }: { patternId: string }) {
  return (
    <p className="small soft range-key hours-key">
      <span>
        <Sample state="open" isBest patternId={patternId} /> best of the hour
      </span>
      {STATES.map((state) => (
        <span key={state}>
          <Sample state={state} isBest={false} patternId={patternId} /> {STATE_WORDS[state].short}
        </span>
      ))}
      <span>
        <svg width={22} height={BOX_H} aria-hidden="true">
          <path className="hours-muf" d={`M1 ${BOX_H / 2}H21`} />
        </svg>{' '}
        median maximum (MUF)
      </span>
      <span>
        <svg width={22} height={BOX_H} aria-hidden="true">
          <path className="hours-working" d={`M1 ${BOX_H / 2}H21`} />
        </svg>{' '}
        working frequency
      </span>
    </p>
  );
}

function Sample({ state, isBest, patternId }: { state: (typeof STATES)[number]; isBest: boolean; patternId: string }) {
  return (
    <svg width={BOX_W + 2} height={BOX_H + 2} aria-hidden="true">
      <HourGlyph
        cell={{ state, isBest }}
        x={BOX_W / 2 + 1}
        y={BOX_H / 2 + 1}
        width={BOX_W}
        height={BOX_H}
        patternId={patternId}
      />
    </svg>
  );
}
