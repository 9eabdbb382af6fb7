import { PICTURE_ID, PICTURES_BYTES, type Picture } from '../model/picture.ts';
import type { Project } from '../model/project.ts';
import { pictureBytes } from './pictureFiles.ts';
import { bytesOfBase64, HEADER_BYTES, headerToKeep } from './pictureHeader.ts';
import { quoted, type Report } from './report.ts';
import { isKnownSubject } from './subjects.ts';

/** That every picture is what it says it is, that all of them fit, and that what shows them names one that is there. */
export function checkPictures(project: Project, report: Report): void {
  const pictures = project.pictures ?? [];
  report.uniqueIds([{ path: ['pictures'], entries: pictures }]);
  checkFileNames(pictures, report);
  report.uniqueIds([{ path: ['photos'], entries: project.photos ?? [] }]);
  pictures.forEach((picture, index) => {
    if (picture.base64 === undefined) {
      if (project.picturesBeside) return;
      report.refuse(['pictures', index], 'The picture itself is missing.', 'Put it in again, or take the entry out.');
      return;
    }
    if (picture.base64.length % 4 !== 0) {
      report.refuse(
        ['pictures', index, 'base64'],
        'The picture is cut off.',
        'Take the picture out, or put it in again.',
      );
      return;
    }
    const header = headerToKeep(bytesOfBase64(picture.base64, HEADER_BYTES));
    const { mime, widthPx, heightPx } = picture;
    if (header?.mime === mime && header.widthPx === widthPx && header.heightPx === heightPx) return;
    report.refuse(
      ['pictures', index],
      header
        ? `It says ${mime}, ${widthPx} by ${heightPx}; the picture itself is ${header.mime}, ${header.widthPx} by ${header.heightPx}.`
        : 'It is neither a PNG nor a JPEG picture.',
      'Take the picture out, or put it in again.',
    );
  });
  const bytes = pictureBytes(project);
  if (bytes > PICTURES_BYTES) {
    report.refuse(
      ['pictures'],
      `All pictures together are ${(bytes / 1e6).toFixed(0)} MB; a document holds up to ${PICTURES_BYTES / 1e6} MB of them.`,
      'Take some out, or put smaller ones in.',
    );
  }
  checkUses(project, report);
}

/** That every id can be the name of the picture's file, and of no other's where a disk makes nothing of capitals. */
function checkFileNames(pictures: readonly Pick<Picture, 'id'>[], report: Report): void {
  const known = new Map<string, string>();
  pictures.forEach(({ id }, index) => {
    if (!PICTURE_ID.test(id)) {
      report.refuse(
        ['pictures', index, 'id'],
        'The id of a picture is also the name of its file.',
        'Use up to 64 letters, digits and hyphens.',
      );
    }
    const other = known.get(id.toLowerCase());
    if (other !== undefined && other !== id) {
      report.refuse(
        ['pictures', index, 'id'],
        `The id "${id}" is that of another picture, "${other}", but for capitals, which not every disk tells apart.`,
        'Give one of them another id.',
      );
    }
    known.set(id.toLowerCase(), id);
  });
}

function checkUses(project: Project, report: Report): void {
  const known = new Set((project.pictures ?? []).map(({ id }) => id));
  const refuseUnknown = (path: readonly PropertyKey[], id: string): void => {
    if (known.has(id)) return;
    report.refuse(path, `There is no picture "${id}".`, `Name one of ${quoted(known)}, or take the entry out.`);
  };
  if (project.underlay) refuseUnknown(['underlay', 'pictureId'], project.underlay.pictureId);
  (project.photos ?? []).forEach((photo, index) => {
    refuseUnknown(['photos', index, 'pictureId'], photo.pictureId);
    if (isKnownSubject(project, photo.subject)) return;
    report.refuse(
      ['photos', index, 'subject'],
      `It is of the ${photo.subject.kind} "${photo.subject.id}", which is not in this file.`,
      'Correct the id, or take the photo out.',
    );
  });
}
