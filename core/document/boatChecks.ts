import type { Boat } from '../model/boat.ts';
import type { PartProblem } from './overrides.ts';

/** Numbers of a boat that contradict each other, each in range by itself. Paths start at the boat. */
export function boatProblems(boat: Boat): PartProblem[] {
  const problems: PartProblem[] = [];
  if (boat.lwlM > boat.loaM) {
    problems.push({
      path: ['lwlM'],
      what: `The waterline length, ${boat.lwlM} m, is more than the length over all, ${boat.loaM} m.`,
      mend: 'Correct one of the two.',
    });
  }
  boat.masts.forEach((mast, index) => {
    if (mast.truckZM > mast.footZM) return;
    problems.push({
      path: ['masts', index, 'truckZM'],
      what: `The truck of ${mast.name}, ${mast.truckZM} m, is not above its foot, ${mast.footZM} m.`,
      mend: 'Give both heights above the waterline, the truck the greater.',
    });
  });
  boat.fittings.forEach((fitting, index) => {
    problems.push(...span(fitting.name, fitting, ['fittings', index]));
    if (fitting.zTopM >= fitting.zBaseM) return;
    problems.push({
      path: ['fittings', index, 'zTopM'],
      what: `The top of ${fitting.name}, ${fitting.zTopM} m, is below its base, ${fitting.zBaseM} m.`,
      mend: 'Give both heights above the waterline, the top the greater.',
    });
  });
  boat.compartments.forEach((space, index) => {
    problems.push(...span(space.name, space, ['compartments', index]));
  });
  boat.deckhouses.forEach((house, index) => {
    problems.push(...span('The deckhouse', house, ['deckhouses', index]));
  });
  return problems;
}

function span(
  name: string,
  { xForeM, xAftM }: { xForeM: number; xAftM: number },
  path: readonly PropertyKey[],
): PartProblem[] {
  if (xAftM >= xForeM) return [];
  return [
    {
      path: [...path, 'xAftM'],
      what: `${name} ends at ${xAftM} m, forward of where it begins at ${xForeM} m.`,
      mend: 'Stations are metres aft of the stem: the after end has the greater number.',
    },
  ];
}
