import type { Picture } from '../../core/model/picture.ts';

/** The picture for an image element; null where it was not found. The page's policy allows pictures from its own data only. */
export const pictureUrl = ({ mime, base64 }: Picture): string | null =>
  base64 === undefined ? null : `data:${mime};base64,${base64}`;
