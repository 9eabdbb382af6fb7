import { Button } from 'react-aria-components';
import { addPhoto, removePhoto, setPhoto } from '../../../core/edit/pictures.ts';
import type { Photo, Project, Subject } from '../../../core/model/project.ts';
import { PictureButton } from '../../pictures/PictureButton.tsx';
import { pictureUrl } from '../../pictures/pictureUrl.ts';
import { TextRow } from '../../ui/TextRow.tsx';
import { Fold, useEdit } from './fields.tsx';
import { DateRow } from './Measurements.tsx';
import { isSameSubject } from './reckon.ts';

/** Photos of the selected thing, as evidence or for whoever works on it. */
export function Photos({ project, subject, name }: { project: Project; subject: Subject; name: string }) {
  const edit = useEdit();
  const photos = (project.photos ?? []).filter((photo) => isSameSubject(photo.subject, subject));
  return (
    <section className="panel-section" aria-label="Photos">
      <h3 className="heading">Photos</h3>
      {photos.length === 0 ? (
        <p className="small soft">
          None yet. Only the picture itself is kept, without what the camera wrote beside it.
        </p>
      ) : null}
      {photos.map((photo) => (
        <PhotoFold key={photo.id} project={project} photo={photo} name={name} />
      ))}
      <div className="row">
        <PictureButton
          label="Add a photo…"
          onPicture={(picture) =>
            edit(`Photo of ${name} added`, (before) =>
              addPhoto(before, { ...picture, subject, caption: '', date: null }),
            )
          }
        />
      </div>
    </section>
  );
}

function PhotoFold({ project, photo, name }: { project: Project; photo: Photo; name: string }) {
  const edit = useEdit();
  const picture = project.pictures?.find(({ id }) => id === photo.pictureId);
  if (!picture) return null;
  const url = pictureUrl(picture);
  const title = photo.caption === '' ? picture.name : photo.caption;
  return (
    <Fold title={title} note={photo.date ?? 'no date'}>
      {() => (
        <>
          {url ? (
            <img className="photo" src={url} alt={title} />
          ) : (
            <p className="small">Not found beside the document.</p>
          )}
          <TextRow
            label="Caption"
            value={photo.caption}
            onCommit={(caption) =>
              edit(`Caption of a photo of ${name}`, (before) => setPhoto(before, photo.id, { caption }))
            }
          />
          <DateRow
            value={photo.date}
            onCommit={(date) => edit(`Date of a photo of ${name}`, (before) => setPhoto(before, photo.id, { date }))}
          />
          <div className="row">
            <Button
              className="button"
              onPress={() => edit(`Photo of ${name} taken out`, (before) => removePhoto(before, photo.id))}
            >
              Take it out
            </Button>
          </div>
        </>
      )}
    </Fold>
  );
}
