import type { Picture } from '../../core/model/picture.ts';

/** The picture for an image element. The policy of the page allows pictures from its own data, and none from elsewhere. */
export const pictureUrl = ({ mime, base64 }: Picture): string => `data:${mime};base64,${base64}`;
