import { assessmentRows } from './assessments.ts';
import { modelRows } from './models.ts';
import { printSideBySide } from './sideBySide.ts';
import { solveRows } from './solves.ts';
import { studyRows } from './studies.ts';
import { kept } from './timing.ts';

// `npm run bench`: how fast the models, the solves behind the panels and the whole assessment are, on one core.

console.log('Models, sums in a second');
console.table(modelRows());
console.log('Solves behind the panels, cold');
console.table(solveRows());
console.log('Assessment (aim at 500 items: 100 ms cold, 16 ms after a move)');
console.table(assessmentRows());
console.log('Failure study, beyond the assessment (aim: one frame)');
console.table(studyRows());
printSideBySide();
console.log(
  `Heap in use at the end: ${(process.memoryUsage().heapUsed / 1e6).toFixed(0)} MB. Sum of all, so that none is left out: ${kept().toExponential(3)}`,
);
