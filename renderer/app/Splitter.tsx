import { type KeyboardEvent, type PointerEvent, useState } from 'react';

const STEP_PX = 16;

/** A column's width that the reader can drag or change with the arrow keys. */
export function Splitter({
  name,
  width,
  min,
  max,
  onChange,
}: {
  name: string;
  width: number;
  min: number;
  max: number;
  onChange: (width: number) => void;
}) {
  const [grip, setGrip] = useState<{ x: number; width: number } | null>(null);
  const change = (next: number): void => onChange(Math.round(Math.min(max, Math.max(min, next))));
  const handleKey = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowLeft') change(width + STEP_PX);
    else if (event.key === 'ArrowRight') change(width - STEP_PX);
    else return;
    event.preventDefault();
  };
  const handleDown = (event: PointerEvent<HTMLDivElement>): void => {
    event.currentTarget.setPointerCapture(event.pointerId);
    setGrip({ x: event.clientX, width });
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a separator that can be moved has no element of its own
    <div
      className="splitter"
      role="separator"
      aria-orientation="vertical"
      aria-label={name}
      aria-valuenow={width}
      aria-valuemin={min}
      aria-valuemax={max}
      tabIndex={0}
      onKeyDown={handleKey}
      onPointerDown={handleDown}
      onPointerMove={(event) => grip && change(grip.width + grip.x - event.clientX)}
      onPointerUp={() => setGrip(null)}
      onPointerCancel={() => setGrip(null)}
    />
  );
}
