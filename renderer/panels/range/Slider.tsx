import { useId } from 'react';

/** A number on a slide, with its value in words beside its name. Arrow keys step it by one. */
export function Slider({
  label,
  value,
  words,
  min,
  max,
  onChange,
}: {
  label: string;
  value: number;
  words: string;
  min: number;
  max: number;
  onChange: (value: number) => void;
}) {
  const id = useId();
  return (
    <div className="slide">
      <span className="row-between">
        <label className="label" htmlFor={id}>
          {label}
        </label>
        <output className="slide-value" htmlFor={id} aria-hidden="true">
          {words}
        </output>
      </span>
      <span className="slide-track">
        {min < 0 ? <span className="slide-middle" aria-hidden="true" /> : null}
        <input
          id={id}
          type="range"
          min={min}
          max={max}
          step={1}
          value={value}
          aria-valuetext={words}
          onChange={(event) => onChange(event.target.valueAsNumber)}
        />
      </span>
    </div>
  );
}
