import brannochTern from '../../assets/demo/brannoch-tern.backstay?raw';
import pelluna from '../../assets/demo/pelluna.backstay?raw';
import vessarine from '../../assets/demo/vessarine.backstay?raw';
import { parseProject } from '../../core/document/load.ts';
import type { Project } from '../../core/model/project.ts';

/** The demo boats, first the one a first start opens. Boats, places and people are invented. */
export const DEMOS = [
  { id: 'brannoch-tern', name: 'Brannoch Tern, steel ketch, owner refit', text: brannochTern },
  { id: 'pelluna', name: 'Pelluna, aluminium trawler, electrician’s quote', text: pelluna },
  { id: 'vessarine', name: 'Vessarine, catamaran, survey before a passage', text: vessarine },
] as const;
export type DemoId = (typeof DEMOS)[number]['id'];

/** The project of a demo boat. A demo that does not load is a defect, so it throws. */
export function demoProject(id: DemoId): Project {
  const demo = DEMOS.find((known) => known.id === id);
  const loaded = demo && parseProject(demo.text);
  if (!loaded?.ok) throw new Error(`demo boat ${id} does not load`);
  return loaded.project;
}
