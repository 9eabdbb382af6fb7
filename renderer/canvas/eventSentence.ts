import type { MatrixRow, Redundancy } from '../../core/redundancy/types.ts';

/** What a failure takes from the intact boat: `3 services lost, 2 reduced.` */
export function eventSentence(redundancy: Pick<Redundancy, 'matrix'>, row: MatrixRow): string {
  const intact = redundancy.matrix.find(({ event }) => event.kind === 'none');
  const before = new Map(intact?.states.map(({ serviceId, grade }) => [serviceId, grade]));
  const lost = row.states.filter(({ serviceId, grade }) => grade === 'lost' && before.get(serviceId) !== 'lost').length;
  const reduced = row.states.filter(
    ({ serviceId, grade }) => grade === 'reduced' && before.get(serviceId) === 'full',
  ).length;
  if (lost === 0 && reduced === 0) return 'No service is lost or reduced by it.';
  const parts = [
    ...(lost > 0 ? [`${lost} ${lost === 1 ? 'service' : 'services'} lost`] : []),
    ...(reduced > 0 ? [`${reduced}${lost > 0 ? '' : reduced === 1 ? ' service' : ' services'} reduced`] : []),
  ];
  return `${parts.join(', ')}.`;
}
