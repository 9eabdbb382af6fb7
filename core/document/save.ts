import { type Project, projectSchema } from '../model/project.ts';

/**
 * The text of a `*.backstay` file: keys in the order of the schema whatever order edits left them in, two spaces of
 * indent, a newline at the end. The same project always gives the same text, so that versions can be compared.
 * @throws when the project is not valid, which no edit command leaves it
 */
export function serialiseProject(project: Project): string {
  return `${JSON.stringify(projectSchema.parse(project), null, 2)}\n`;
}
