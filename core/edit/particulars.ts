import { type Project, projectSchema } from '../model/project.ts';
import { type Change, changed, edited } from './change.ts';

export type ParticularsChange = Pick<
  Change<Project>,
  'title' | 'layoutName' | 'layoutNote' | 'purpose' | 'preparedBy' | 'revision' | 'notes'
>;

/** What the title block and the cover say. */
const particularsSchema = projectSchema.pick({
  title: true,
  layoutName: true,
  layoutNote: true,
  purpose: true,
  preparedBy: true,
  revision: true,
  notes: true,
});

/** Changes title, layout name, purpose, author, revision or notes. */
export function setParticulars(project: Project, change: ParticularsChange): Project {
  const { title, layoutName, layoutNote, purpose, preparedBy, revision, notes } = project;
  const current = {
    title,
    layoutName,
    purpose,
    preparedBy,
    revision,
    notes,
    ...(layoutNote === undefined ? {} : { layoutNote }),
  };
  const after = changed<typeof current & { layoutNote?: string | undefined }>(
    current,
    change,
    particularsSchema,
    'Title block',
  );
  if (after === current) return project;
  return edited(project, (draft) => {
    Object.assign(draft, after);
    if (after.layoutNote === undefined) delete draft.layoutNote;
  });
}
