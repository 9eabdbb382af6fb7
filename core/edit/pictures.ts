import { pictureBytes } from '../document/pictureFiles.ts';
import { sha256Hex } from '../document/pictureHash.ts';
import { base64Of, headerToKeep } from '../document/pictureHeader.ts';
import { isKnownSubject } from '../document/subjects.ts';
import { nextId } from '../model/ids.ts';
import {
  PICTURE_BYTES,
  PICTURES_BYTES,
  type Picture,
  pictureSchema,
  type Underlay,
  underlaySchema,
} from '../model/picture.ts';
import { type Photo, type Project, photoSchema, type Subject } from '../model/project.ts';
import { type Change, changed, edited } from './change.ts';
import { RefusedEdit, requireValid } from './refused.ts';

/** A picture as it comes from the user. */
export interface NewPicture {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Two points of a picture that say how large it is: the stem and the stern, where each meets the waterline. */
export interface UnderlayPoints {
  readonly stem: { readonly xPx: number; readonly yPx: number };
  readonly stern: { readonly xPx: number; readonly yPx: number };
}

/**
 * Lays a picture under the drawing, taking it into the document; the one before it goes out unless a photo shows it too. It
 * lies as if the boat filled three quarters of its width with the waterline a third up, until two points are given.
 * @throws RefusedEdit for what is no PNG or JPEG, or too large, or too much with the pictures there are
 */
export function setUnderlayPicture(project: Project, input: NewPicture): Project {
  const picture = newPicture(project, input);
  const widthOfBoatPx = 0.75 * picture.widthPx;
  const underlay: Underlay = {
    pictureId: picture.id,
    stemXPx: 0.875 * picture.widthPx,
    waterlineYPx: (2 / 3) * picture.heightPx,
    metresPerPx: project.boat.loaM / widthOfBoatPx,
    bow: 'right',
    strengthPercent: 40,
    isShown: true,
  };
  return withUsedPictures({ ...withPicture(project, picture), underlay });
}

/** Changes how the picture lies. @throws RefusedEdit for a value out of range, or where there is no picture */
export function setUnderlay(project: Project, change: Change<Underlay>): Project {
  if (!project.underlay) throw new RefusedEdit('There is no picture under the drawing: choose one first.');
  const underlay = changed(project.underlay, change, underlaySchema, 'Picture under the drawing');
  return underlay === project.underlay ? project : { ...project, underlay };
}

/**
 * Scales the picture by the stem and the stern at the waterline: the boat's length over all lies between them, the waterline
 * half way between their heights, and the bow where the stem is.
 * @throws RefusedEdit where the two are less than 20 px apart
 */
export function scaleUnderlay(project: Project, { stem, stern }: UnderlayPoints): Project {
  const lengthPx = Math.abs(stem.xPx - stern.xPx);
  if (!(lengthPx >= 20)) {
    throw new RefusedEdit(
      'The stem and the stern are too close together in the picture: mark the two ends of the boat.',
    );
  }
  return setUnderlay(project, {
    stemXPx: stem.xPx,
    waterlineYPx: (stem.yPx + stern.yPx) / 2,
    metresPerPx: project.boat.loaM / lengthPx,
    bow: stem.xPx < stern.xPx ? 'left' : 'right',
  });
}

/**
 * Whether the pictures travel in a folder beside the document, or in it.
 * @throws RefusedEdit where one that is to go in was not found, or all of them are too large together
 */
export function setPicturesBeside(project: Project, isBeside: boolean): Project {
  if ((project.picturesBeside ?? false) === isBeside) return project;
  const { picturesBeside: _before, ...rest } = project;
  const missing = isBeside ? [] : (project.pictures ?? []).filter(({ base64 }) => base64 === undefined);
  if (missing.length > 0) {
    throw new RefusedEdit(
      `${missing.map(({ name }) => name).join(', ')} could not be found beside the document, so it cannot be put in: take it out first.`,
    );
  }
  const bytes = pictureBytes(project);
  if (!isBeside && bytes > PICTURES_BYTES) {
    throw new RefusedEdit(
      `All pictures together are ${megabytes(bytes)}; up to ${megabytes(PICTURES_BYTES)} fit in a document. Take some out first.`,
    );
  }
  return isBeside ? { ...rest, picturesBeside: true } : rest;
}

/** Takes the picture from under the drawing, and out of the document where nothing else shows it. */
export function removeUnderlay(project: Project): Project {
  const { underlay, ...rest } = project;
  return underlay ? withUsedPictures(rest) : project;
}

/** Adds a photo of something aboard. @throws RefusedEdit as `setUnderlayPicture` */
export function addPhoto(
  project: Project,
  input: NewPicture & { readonly subject: Subject; readonly caption: string; readonly date: string | null },
): Project {
  const picture = newPicture(project, input);
  const { subject, caption, date } = input;
  const photo: Photo = { id: nextId(project, 'photo'), pictureId: picture.id, subject, caption, date };
  requireValid(photoSchema, photo, 'Photo');
  return { ...withPicture(project, picture), photos: [...(project.photos ?? []), photo] };
}

/** Changes a photo's caption or date. @throws RefusedEdit where there is no such photo */
export function setPhoto(project: Project, photoId: string, change: Pick<Change<Photo>, 'caption' | 'date'>): Project {
  const photo = (project.photos ?? []).find(({ id }) => id === photoId);
  if (!photo) throw new RefusedEdit(`There is no photo "${photoId}" in this project.`);
  const after = changed(photo, change, photoSchema, 'Photo');
  if (after === photo) return project;
  return edited(project, (draft) => {
    draft.photos = (project.photos ?? []).map((each) => (each === photo ? after : each));
  });
}

/** Takes a photo out, and its picture where nothing else shows it. */
export function removePhoto(project: Project, photoId: string): Project {
  const photos = (project.photos ?? []).filter(({ id }) => id !== photoId);
  return withUsedPictures({ ...project, photos });
}

/** Without photos of what is in no layout any more. */
export function withoutLostPhotos(project: Project): Project {
  const photos = (project.photos ?? []).filter(({ subject }) => isKnownSubject(project, subject));
  return photos.length === (project.photos ?? []).length ? project : withUsedPictures({ ...project, photos });
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/**
 * A picture as an entry, with the id that its content gives it: so a file that carries a picture's name never holds another,
 * whatever was taken out, undone or saved elsewhere meanwhile. One that is in the document already is that entry.
 */
function newPicture(project: Project, { name, bytes }: NewPicture): Picture {
  const header = headerToKeep(bytes);
  if (!header) throw new RefusedEdit(`${name} is neither a PNG nor a JPEG picture: choose one of these.`);
  if (bytes.length > PICTURE_BYTES) {
    throw new RefusedEdit(
      `${name} is ${megabytes(bytes.length)}; a picture may be up to ${megabytes(PICTURE_BYTES)}. Make it smaller.`,
    );
  }
  const base64 = base64Of(bytes);
  const known = (project.pictures ?? []).find((picture) => picture.base64 === base64);
  if (known) return known;
  const total = pictureBytes(project) + bytes.length;
  if (total > PICTURES_BYTES) {
    throw new RefusedEdit(
      `${name} would bring the pictures of this document to ${megabytes(total)}; up to ${megabytes(PICTURES_BYTES)} fit. Take one out first.`,
    );
  }
  const picture: Picture = { id: `picture-${sha256Hex(bytes).slice(0, 16)}`, name, ...header, base64 };
  requireValid(pictureSchema, picture, name);
  return picture;
}

/** The project with a picture among its own, in place of an entry of that id: the same one that was not found beside it. */
function withPicture(project: Project, picture: Picture): Project {
  const { pictures = [] } = project;
  const isThere = pictures.some(({ id }) => id === picture.id);
  return {
    ...project,
    pictures: isThere ? pictures.map((each) => (each.id === picture.id ? picture : each)) : [...pictures, picture],
  };
}

/** Without pictures that nothing shows any more, and without empty lists. */
function withUsedPictures(project: Project): Project {
  const used = new Set([project.underlay?.pictureId, ...(project.photos ?? []).map(({ pictureId }) => pictureId)]);
  const { pictures = [], photos = [], picturesBeside, ...rest } = project;
  const kept = pictures.filter(({ id }) => used.has(id));
  const beside = picturesBeside && kept.length > 0 ? { picturesBeside } : {};
  return {
    ...rest,
    ...beside,
    ...(kept.length > 0 ? { pictures: kept } : {}),
    ...(photos.length > 0 ? { photos } : {}),
  };
}
