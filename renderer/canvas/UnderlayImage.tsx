import { useEffect, useState } from 'react';
import { Image } from 'react-konva';
import type { Projection } from '../../core/drawing/types.ts';
import type { Picture } from '../../core/model/picture.ts';
import type { Project } from '../../core/model/project.ts';
import { pictureUrl } from '../pictures/pictureUrl.ts';

/** The user's own picture under everything drawn, to scale. */
export function UnderlayImage({ project, projection }: { project: Project; projection: Projection }) {
  const { underlay } = project;
  const picture = underlay?.isShown ? project.pictures?.find(({ id }) => id === underlay.pictureId) : undefined;
  const image = useDecoded(picture);
  if (!underlay || !image) return null;
  const { stemXPx, waterlineYPx, metresPerPx, bow, strengthPercent } = underlay;
  const scale = metresPerPx * projection.scale;
  const across = bow === 'right' ? scale : -scale;
  return (
    <Image
      image={image}
      x={projection.originX - stemXPx * across}
      y={projection.originY - waterlineYPx * scale}
      scaleX={across}
      scaleY={scale}
      opacity={strengthPercent / 100}
      listening={false}
    />
  );
}

function useDecoded(picture: Picture | undefined): HTMLImageElement | null {
  const [decoded, setDecoded] = useState<{ picture: Picture; image: HTMLImageElement } | null>(null);
  useEffect(() => {
    const url = picture && pictureUrl(picture);
    if (!picture || !url) return;
    const image = new window.Image();
    image.onload = () => setDecoded({ picture, image });
    image.src = url;
    return () => {
      image.onload = null;
    };
  }, [picture]);
  return decoded !== null && decoded.picture === picture ? decoded.image : null;
}
