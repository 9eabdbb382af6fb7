import type { Drawing, Shape } from '../../core/drawing/types.ts';
import type { Palette } from './ShapeNode.tsx';

/** A drawing as inline SVG, for the small views that need no hit-testing. */
export function SvgDrawing({ drawing, palette, label }: { drawing: Drawing; palette: Palette; label: string }) {
  return (
    <svg
      width={drawing.width}
      height={drawing.height}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="img"
      aria-label={label}
    >
      {drawing.shapes.map((shape, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no identity of their own and are redrawn as a whole
        <SvgShape key={i} shape={shape} palette={palette} />
      ))}
    </svg>
  );
}

function SvgShape({ shape, palette }: { shape: Shape; palette: Palette }) {
  if (shape.kind === 'text') {
    const turn = shape.rotate ? { transform: `rotate(${shape.rotate} ${shape.x} ${shape.y})` } : {};
    return (
      <text
        x={shape.x}
        y={shape.y}
        fontSize={shape.size}
        fontWeight={shape.bold ? 600 : 400}
        textAnchor={shape.anchor}
        fill={palette[shape.ink]}
        opacity={shape.opacity}
        {...turn}
      >
        {shape.text}
      </text>
    );
  }
  const paint = {
    stroke: palette[shape.stroke],
    fill: palette[shape.fill],
    strokeWidth: shape.width,
    opacity: shape.opacity,
  };
  if (shape.kind === 'circle') return <circle cx={shape.x} cy={shape.y} r={shape.radius} {...paint} />;
  return <path d={shape.d} strokeLinejoin="round" strokeDasharray={shape.dash?.join(' ')} {...paint} />;
}
