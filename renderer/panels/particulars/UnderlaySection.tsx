import { type PointerEvent, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  removeUnderlay,
  scaleUnderlay,
  setPicturesBeside,
  setUnderlay,
  setUnderlayPicture,
  type UnderlayPoints,
} from '../../../core/edit/pictures.ts';
import { PICTURE_BYTES, PICTURES_BYTES, type Picture, type Underlay } from '../../../core/model/picture.ts';
import type { Project } from '../../../core/model/project.ts';
import { useHost } from '../../host/context.ts';
import { PictureButton } from '../../pictures/PictureButton.tsx';
import { pictureUrl } from '../../pictures/pictureUrl.ts';
import { QuantityField } from '../../ui/QuantityField.tsx';
import { Chips } from '../range/Chips.tsx';
import { useEdit } from './fields.tsx';

/** The user's own picture under the drawing: chosen, scaled by the boat's two ends, stronger or fainter. */
export function UnderlaySection({ project }: { project: Project }) {
  const edit = useEdit();
  const { underlay } = project;
  const picture = project.pictures?.find(({ id }) => id === underlay?.pictureId);
  return (
    <section className="panel-section" aria-label="Picture under the drawing">
      <h3 className="heading">Picture under the drawing</h3>
      <p className="small soft">
        A side view of your own, PNG or JPEG: each up to {PICTURE_BYTES / 1e6} MB after it is made smaller,{' '}
        {PICTURES_BYTES / 1e6} MB in all, photos counted. It is not printed.
      </p>
      {underlay && picture ? <Laid project={project} underlay={underlay} picture={picture} /> : null}
      {project.pictures ? <WhereKept project={project} /> : null}
      <div className="row">
        <PictureButton
          label={underlay ? 'Choose another…' : 'Choose a picture…'}
          onPicture={(chosen) => edit('Picture laid under the drawing', (before) => setUnderlayPicture(before, chosen))}
        />
        {underlay ? (
          <Button className="button" onPress={() => edit('Picture taken from under the drawing', removeUnderlay)}>
            Take it away
          </Button>
        ) : null}
      </div>
    </section>
  );
}

/** Whether the pictures travel in the document or in a folder beside it, where the host can keep one. */
function WhereKept({ project }: { project: Project }) {
  const edit = useEdit();
  const host = useHost();
  const isBeside = project.picturesBeside === true;
  const missing = (project.pictures ?? []).filter(({ base64 }) => base64 === undefined);
  return (
    <>
      {missing.length > 0 ? (
        <p className="small">
          Not found beside the document: {missing.map(({ name }) => name).join(', ')}. Put the folder back beside it and
          open it again, or take them out.
        </p>
      ) : null}
      {host.kind === 'electron' || isBeside ? (
        <Chips
          label="All pictures and photos travel"
          options={PLACES}
          value={isBeside ? 'beside' : 'inside'}
          onChange={(place) =>
            edit(place === 'beside' ? 'Pictures kept beside the document' : 'Pictures kept in the document', (before) =>
              setPicturesBeside(before, place === 'beside'),
            )
          }
        />
      ) : (
        <p className="small soft">In the browser they travel in the document: it is given one file at a time.</p>
      )}
    </>
  );
}

const PLACES = [
  { id: 'inside', name: 'In the document' },
  { id: 'beside', name: 'In a folder beside it' },
] as const;

function Laid({ project, underlay, picture }: { project: Project; underlay: Underlay; picture: Picture }) {
  const edit = useEdit();
  const points = pointsOf(project, underlay);
  const scale = (next: UnderlayPoints): boolean =>
    edit('Picture under the drawing scaled', (before) => scaleUnderlay(before, next));
  return (
    <>
      <p className="small">Put one mark where the stem meets the waterline, the other where the stern does.</p>
      <Marks picture={picture} points={points} onMoved={scale} />
      <div className="particulars-fields particulars-fields--three">
        <QuantityField
          label="Stem, from the left, px"
          value={points.stem.xPx}
          unit="count"
          min={-20_000}
          max={20_000}
          onCommit={(xPx) => xPx !== null && scale({ ...points, stem: { ...points.stem, xPx } })}
        />
        <QuantityField
          label="Stern, from the left, px"
          value={points.stern.xPx}
          unit="count"
          min={-20_000}
          max={20_000}
          onCommit={(xPx) => xPx !== null && scale({ ...points, stern: { ...points.stern, xPx } })}
        />
        <QuantityField
          label="Waterline, from the top, px"
          value={points.stem.yPx}
          unit="count"
          min={-20_000}
          max={20_000}
          onCommit={(waterlineYPx) =>
            waterlineYPx !== null &&
            edit('Waterline of the picture moved', (before) => setUnderlay(before, { waterlineYPx }))
          }
        />
        <QuantityField
          label="Strength"
          value={underlay.strengthPercent}
          unit="percent"
          min={5}
          max={100}
          onCommit={(strengthPercent) =>
            strengthPercent !== null &&
            edit('Strength of the picture changed', (before) => setUnderlay(before, { strengthPercent }))
          }
        />
      </div>
      <label className="row small">
        <input
          type="checkbox"
          checked={underlay.isShown}
          onChange={({ target: { checked } }) =>
            edit(checked ? 'Picture shown' : 'Picture hidden', (before) => setUnderlay(before, { isShown: checked }))
          }
        />
        Show it under the drawing
      </label>
    </>
  );
}

function pointsOf({ boat }: Project, { stemXPx, waterlineYPx, metresPerPx, bow }: Underlay): UnderlayPoints {
  const lengthPx = boat.loaM / metresPerPx;
  return {
    stem: { xPx: Math.round(stemXPx), yPx: Math.round(waterlineYPx) },
    stern: { xPx: Math.round(stemXPx + (bow === 'left' ? lengthPx : -lengthPx)), yPx: Math.round(waterlineYPx) },
  };
}

/** The picture with its two marks, which the pointer drags; the fields below do the same by keyboard. */
function Marks({
  picture,
  points,
  onMoved,
}: {
  picture: Picture;
  points: UnderlayPoints;
  onMoved: (points: UnderlayPoints) => void;
}) {
  const frame = useRef<SVGSVGElement>(null);
  const [dragged, setDragged] = useState<{ end: keyof UnderlayPoints; points: UnderlayPoints } | null>(null);
  const { stem, stern } = dragged?.points ?? points;
  const at = (event: PointerEvent): { xPx: number; yPx: number } => {
    const toPicture = frame.current?.getScreenCTM()?.inverse();
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toPicture);
    return { xPx: Math.round(x), yPx: Math.round(y) };
  };
  const radius = picture.widthPx / 40;
  const mark = (end: keyof UnderlayPoints, { xPx, yPx }: { xPx: number; yPx: number }, letter: string) => (
    <g
      className="underlay-mark"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setDragged({ end, points });
      }}
      onPointerMove={(event) =>
        dragged?.end === end && setDragged({ end, points: { ...dragged.points, [end]: at(event) } })
      }
      onPointerUp={() => {
        if (dragged) onMoved(dragged.points);
        setDragged(null);
      }}
    >
      <circle cx={xPx} cy={yPx} r={radius} />
      <text x={xPx} y={yPx} dy="0.35em" fontSize={radius * 1.2} textAnchor="middle">
        {letter}
      </text>
    </g>
  );
  return (
    <svg
      ref={frame}
      className="underlay-marks"
      viewBox={`0 0 ${picture.widthPx} ${picture.heightPx}`}
      role="img"
      aria-label={`${picture.name} with the stem and the stern marked`}
    >
      <image href={pictureUrl(picture) ?? ''} width={picture.widthPx} height={picture.heightPx} />
      <line x1={stem.xPx} y1={stem.yPx} x2={stern.xPx} y2={stern.yPx} strokeWidth={radius / 5} />
      {mark('stem', stem, 'F')}
      {mark('stern', stern, 'A')}
    </svg>
  );
}
