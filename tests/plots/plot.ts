import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ALL_FIGURES, PICTURES } from './all.ts';

// Draws the pictures of the method notes from the data of the published-source tests.

mkdirSync(PICTURES, { recursive: true });
for (const { file, draw } of ALL_FIGURES) {
  writeFileSync(join(PICTURES, file), draw());
  console.log(join(PICTURES, file));
}
