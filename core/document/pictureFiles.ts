import type { Picture } from '../model/picture.ts';
import type { Project } from '../model/project.ts';
import { base64Of, bytesOfBase64, readPictureHeader } from './pictureHeader.ts';

/** A picture as a file of its own. */
export interface PictureFile {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Name of a picture's file: made from its id, which is no name of anyone's choosing. */
export const pictureFileName = ({ id, mime }: Pick<Picture, 'id' | 'mime'>): string =>
  `${id.replace(/[^A-Za-z0-9-]/g, '-')}.${mime === 'image/png' ? 'png' : 'jpg'}`;

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

/**
 * The document with the pictures that were found beside it.
 * @param found bytes by file name; a file that is not the picture the document speaks of is as good as not found
 */
export function withFoundPictures(
  project: Project,
  found: ReadonlyMap<string, Uint8Array>,
): { readonly project: Project; readonly missing: readonly string[] } {
  const missing: string[] = [];
  const pictures = (project.pictures ?? []).map((picture): Picture => {
    if (picture.base64 !== undefined) return picture;
    const bytes = found.get(pictureFileName(picture));
    const header = bytes && readPictureHeader(bytes);
    const { mime, widthPx, heightPx } = picture;
    if (bytes && header?.mime === mime && header.widthPx === widthPx && header.heightPx === heightPx) {
      return { ...picture, base64: base64Of(bytes) };
    }
    missing.push(picture.name);
    return picture;
  });
  return { project: missing.length === pictures.length ? project : { ...project, pictures }, missing };
}
