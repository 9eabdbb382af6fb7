import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseProject } from '../../core/document/load.ts';
import type { Project } from '../../core/model/project.ts';

const DEMO = resolve('assets/demo');

/** A demo boat by the name of its file. */
export function demo(name: string): Project {
  const loaded = parseProject(readFileSync(join(DEMO, `${name}.backstay`), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load`);
  return loaded.project;
}
