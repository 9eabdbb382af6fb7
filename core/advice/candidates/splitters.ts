import { setItem } from '../../edit/items.ts';
import type { PartOf } from '../../model/part.ts';
import { SAME_PORTS } from '../cautions.ts';
import { anySingle, feedsOf, fittedOf, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';
import { supplyVoltageV, takesVoltage } from '../wires.ts';

/** A splitter of the same sockets that joins the voice set to the antenna when it has no supply. */
export function splitterCandidates(survey: Survey): readonly Candidate[] {
  return fittedOf(survey, 'inline').flatMap(({ item, part }): Candidate[] => {
    if (part.deviceClass !== 'splitter-active' || passes(part)) return [];
    const feeds = (survey.index.feedsInto.get(item.id) ?? []).map(({ id }) => `feed:${id}`);
    if (!anySingle(survey, [`item:${item.id}`, ...feeds])) return [];
    const other = [...survey.index.parts.values()].find(
      (each): each is PartOf<'inline'> =>
        each.kind === 'inline' && each.deviceClass === part.deviceClass && passes(each) && hasPortsOf(each, part),
    );
    if (!other || !feedsOf(survey, item.id).every((feed) => isFor(other, supplyVoltageV(survey.project, feed))))
      return [];
    return [
      {
        id: `splitter-kind:${item.id}`,
        kind: 'splitter-kind',
        question: `splitter:${item.id}`,
        title: `Fit for ${item.tag} a splitter that joins the voice set to the antenna when it has no supply`,
        cautions: [SAME_PORTS],
        subjects: [{ kind: 'item', id: item.id }],
        apply: (project) => setItem(project, item.id, { partId: other.id }),
      },
    ];
  });
}

/** Nothing is said against a splitter whose supply is not drawn up to its battery. */
const isFor = (part: PartOf<'inline'>, supplyV: number | null): boolean =>
  supplyV === null || takesVoltage(part, supplyV);

/** Whether one way that may be sent through stays joined without supply. */
const passes = ({ throughs }: PartOf<'inline'>): boolean =>
  throughs.some(({ transmit, whenUnpowered }) => transmit && whenUnpowered === 'through');

const hasPortsOf = (part: PartOf<'inline'>, old: PartOf<'inline'>): boolean =>
  part.ports.length === old.ports.length &&
  old.ports.every(({ id, medium }) => part.ports.some((port) => port.id === id && port.medium === medium));
