import { PICTURES_BYTES, type Picture } from '../model/picture.ts';
import type { Project } from '../model/project.ts';
import { base64Bytes, base64Of, bytesOfBase64, headerToKeep } from './pictureHeader.ts';

/** A picture as a file of its own. */
export interface PictureFile {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Name of a picture's file, made from its id, whose letters are safe in a name (`PICTURE_ID`). */
export const pictureFileName = ({ id, mime }: Pick<Picture, 'id' | 'mime'>): string =>
  `${id}.${mime === 'image/png' ? 'png' : 'jpg'}`;

/**
 * A document whose pictures lie beside it, as it is written: the document without them, and their files. One whose pictures
 * travel in it is given back as it is.
 */
export function splitPictures(project: Project): { readonly project: Project; readonly files: readonly PictureFile[] } {
  if (!project.picturesBeside) return { project, files: [] };
  const pictures = project.pictures ?? [];
  const files = pictures.flatMap((picture) =>
    picture.base64 === undefined ? [] : [{ fileName: pictureFileName(picture), bytes: bytesOfBase64(picture.base64) }],
  );
  const bare = pictures.map(({ base64: _content, ...rest }) => rest);
  return { project: { ...project, pictures: bare }, files };
}

/** Pictures of a document that lie beside it and are not read yet. */
export function picturesToRead({ pictures = [], picturesBeside }: Project): readonly Picture[] {
  return picturesBeside ? pictures.filter(({ base64 }) => base64 === undefined) : [];
}

/** Bytes of the pictures a document holds; those beside it that are not read count nothing. */
export const pictureBytes = ({ pictures = [] }: Pick<Project, 'pictures'>): number =>
  pictures.reduce((sum, { base64 = '' }) => sum + base64Bytes(base64), 0);

/**
 * The document with the pictures that were found beside it.
 * @param found bytes by file name; a file that is not the picture the document speaks of is as good as not found, and so is
 * one that brings the document over what all pictures together may be
 */
export function withFoundPictures(
  project: Project,
  found: ReadonlyMap<string, Uint8Array>,
): { readonly project: Project; readonly missing: readonly string[] } {
  const missing: string[] = [];
  let held = pictureBytes(project);
  const pictures = (project.pictures ?? []).map((picture): Picture => {
    if (picture.base64 !== undefined) return picture;
    const bytes = found.get(pictureFileName(picture));
    const header = bytes && headerToKeep(bytes);
    const { mime, widthPx, heightPx } = picture;
    const isIt = header?.mime === mime && header.widthPx === widthPx && header.heightPx === heightPx;
    if (bytes && isIt && held + bytes.length <= PICTURES_BYTES) {
      held += bytes.length;
      return { ...picture, base64: base64Of(bytes) };
    }
    missing.push(picture.name);
    return picture;
  });
  return { project: missing.length === pictures.length ? project : { ...project, pictures }, missing };
}
