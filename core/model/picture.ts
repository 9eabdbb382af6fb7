import { z } from 'zod';

/** Longest side a picture is kept at, px; larger ones are made smaller when they are taken in. */
export const PICTURE_SIDE_PX = 2400;
/** Most bytes of one picture, and of all pictures of a document together; said where one is refused. */
export const PICTURE_BYTES = 4_000_000;
export const PICTURES_BYTES = 25_000_000;

/** Ids of pictures: letters that are safe in the name of a file, so that no id is a path. */
export const PICTURE_ID = /^[A-Za-z0-9-]{1,64}$/;
/** Names of the files pictures have beside a document: an id and the ending of its kind. */
export const PICTURE_FILE_NAME = /^[A-Za-z0-9-]{1,64}\.(png|jpg)$/;

/** Base64 takes four letters for three bytes. */
const BASE64_LENGTH = Math.ceil(PICTURE_BYTES / 3) * 4;

/** A picture of the user's own. Only kinds that carry no script: never SVG. */
export const pictureSchema = z.strictObject({
  id: z.string(),
  /** What the file was called, for people. */
  name: z.string(),
  mime: z.enum(['image/png', 'image/jpeg']),
  // Also holds a file of few bytes that claims a crowd of pixels, each of which would take four bytes once decoded.
  widthPx: z.number().int().min(1).max(PICTURE_SIDE_PX),
  heightPx: z.number().int().min(1).max(PICTURE_SIDE_PX),
  /** The picture itself, base64. Absent in the file of a document whose pictures lie beside it, and where one was not found. */
  base64: z
    .string()
    .min(1)
    .max(BASE64_LENGTH)
    .regex(/^[A-Za-z0-9+/]+={0,2}$/)
    .optional(),
});
export type Picture = z.infer<typeof pictureSchema>;

/** A picture under the drawing, laid to scale: where the stem and the waterline are in it, and how large a pixel is. */
export const underlaySchema = z.strictObject({
  pictureId: z.string(),
  /** Column of the stem (x = 0) and row of the waterline (z = 0), px from the top left corner. */
  stemXPx: z.number().min(-20_000).max(20_000),
  waterlineYPx: z.number().min(-20_000).max(20_000),
  metresPerPx: z.number().min(0.0001).max(200),
  /** Which way she points in the picture; the drawing has the bow to the right. */
  bow: z.enum(['left', 'right']),
  /** How strong it shows, per cent. */
  strengthPercent: z.number().min(5).max(100),
  isShown: z.boolean(),
});
export type Underlay = z.infer<typeof underlaySchema>;
