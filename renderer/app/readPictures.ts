import { pictureFileName, picturesToRead, withFoundPictures } from '../../core/document/pictureFiles.ts';
import type { Project } from '../../core/model/project.ts';
import type { Host } from '../../electron/contract.ts';

/** A document with the pictures that lie beside its file; notes name those that were not found, whose entries stay. */
export async function withPicturesBeside(
  host: Host,
  handle: string,
  project: Project,
): Promise<{ readonly project: Project; readonly notes: readonly string[] }> {
  const wanted = picturesToRead(project);
  if (wanted.length === 0) return { project, notes: [] };
  const found = new Map<string, Uint8Array>();
  for (const picture of wanted) {
    const fileName = pictureFileName(picture);
    const answer = await host.readBeside({ handle, fileName });
    if (answer.ok && answer.value) found.set(fileName, answer.value);
  }
  const { project: filled, missing } = withFoundPictures(project, found);
  const names = missing.join(', ');
  return {
    project: filled,
    notes:
      missing.length === 0
        ? []
        : [
            `Not found beside the document: ${names}. What shows ${missing.length === 1 ? 'it' : 'them'} stays as it is`,
          ],
  };
}
