import { Button } from 'react-aria-components';
import { indexProject } from '../../../../core/catalogue/lookup.ts';
import { setItem } from '../../../../core/edit/items.ts';
import type { Project } from '../../../../core/model/project.ts';
import type { MeansFinder } from '../../../../core/redundancy/meansLeft.ts';
import { type RaftItem, type RaftList, raftList, type Taken } from '../../../../core/redundancy/raft.ts';
import { serviceOf } from '../../../../core/report/words.ts';
import { useApp, useAppStore } from '../../../store/context.ts';
import { useAssessment, useMeansLeft } from '../../../store/derived.ts';
import { shownProject } from '../../../store/store.ts';
import { useFormat } from '../../../ui/text.ts';
import { FarEndChoice } from '../FarEndChoice.tsx';
import { componentWords, GRADE_SIGNS } from '../words.ts';

const TAKEN: Readonly<Record<Taken, { heading: string; note: string }>> = {
  'grab-bag': { heading: 'In the grab bag', note: 'Goes along when somebody takes the bag.' },
  'floats-free': { heading: 'Floats free', note: 'Comes up by itself if the boat goes down.' },
  'by-hand': { heading: 'To be picked up on the way out', note: 'Counts as reduced: in a hurry it may stay behind.' },
};

/** What goes into the raft, and what can be done with it there. */
export function RaftView() {
  const project = useApp(shownProject);
  const { redundancy } = useAssessment();
  const list = raftList(project, redundancy);
  const meansIn = useMeansLeft();
  if (!list) {
    return (
      <p className="empty">
        Abandoning to the raft is left out of the events of this project. Take it in again under One failure.
      </p>
    );
  }
  return (
    <>
      <section className="panel-section">
        <h3 className="heading">What goes into the raft</h3>
        <p className="small soft">{list.row.event.note}</p>
        {list.goes.length === 0 ? (
          <p>
            Nothing aboard would serve in the raft. A handheld VHF and a 406 MHz beacon, kept in the grab bag, are the
            usual least.
          </p>
        ) : null}
        {(Object.keys(TAKEN) as Taken[]).map((taken) => (
          <TakenGroup key={taken} project={project} taken={taken} goes={list.goes} />
        ))}
        <ShowButton list={list} />
      </section>
      <Services list={list} meansIn={meansIn} />
      <p className="small soft">
        The distress beacon stays the first means: nothing here stands in for it. Test it only by its own test, and keep
        its registration and battery date in order.
      </p>
    </>
  );
}

function TakenGroup({ project, taken, goes }: { project: Project; taken: Taken; goes: readonly RaftItem[] }) {
  const of = goes.filter((each) => each.taken === taken);
  if (of.length === 0) return null;
  const { heading, note } = TAKEN[taken];
  return (
    <div className="raft-group">
      <h4 className="heading">{heading}</h4>
      <p className="small soft">{note}</p>
      <ul className="plain-list">
        {of.map((each) => (
          <RaftLine key={each.itemId} project={project} line={each} />
        ))}
      </ul>
    </div>
  );
}

function RaftLine({ project, line }: { project: Project; line: RaftItem }) {
  const store = useAppStore();
  const item = indexProject(project).items.get(line.itemId);
  if (!item) return null;
  const subject = { kind: 'item' as const, id: item.id };
  const pack = (): void => {
    store
      .getState()
      .edit(`${item.tag}: into the grab bag`, (before) => setItem(before, item.id, { facts: { inGrabBag: true } }));
  };
  return (
    <li className="raft-line">
      <span>
        <Button className="button link" onPress={() => store.getState().select([subject])}>
          {item.tag}
        </Button>{' '}
        <span className="soft">{componentWords(project, { subject })}</span>
        {line.doubts.length > 0 ? <span className="doubt"> {line.doubts.join(', ')}</span> : null}
      </span>
      <span className="raft-uses">
        {line.serviceIds.map((id) => (
          <abbr key={id} className="chip" title={serviceOf(id).name}>
            {serviceOf(id).code}
          </abbr>
        ))}
        {line.taken === 'by-hand' ? (
          <Button className="button" aria-label={`Is in the bag: ${item.tag}`} onPress={pack}>
            Is in the bag
          </Button>
        ) : null}
      </span>
    </li>
  );
}

function ShowButton({ list }: { list: RaftList }) {
  const store = useAppStore();
  const isShown = useApp((state) => state.eventId === list.row.event.id);
  return (
    <div className="row">
      <Button className="button" onPress={() => store.getState().showEvent(isShown ? null : list.row.event.id)}>
        {isShown ? 'Show intact boat' : 'Show on the drawing'}
      </Button>
    </div>
  );
}

function Services({ list, meansIn }: { list: RaftList; meansIn: MeansFinder }) {
  const { quantity, rich } = useFormat();
  const means = meansIn(list.row);
  return (
    <section className="panel-section">
      <h3 className="heading">What the crew can do there</h3>
      <FarEndChoice />
      <table className="table raft-services">
        <thead>
          <tr>
            <th scope="col">Service</th>
            <th scope="col">State</th>
            <th scope="col">By what, and how far</th>
          </tr>
        </thead>
        <tbody>
          {list.row.states.map(({ serviceId, grade, reason }) => (
            <tr key={serviceId}>
              <th scope="row">{serviceOf(serviceId).name}</th>
              <td>
                <span className={`grade grade--${GRADE_SIGNS[grade].className}`}>{GRADE_SIGNS[grade].word}</span>
              </td>
              <td>
                {grade === 'lost'
                  ? list.lost.includes(serviceId)
                    ? 'Stays aboard.'
                    : 'Nothing for it, aboard or here.'
                  : reason}
                {(means.get(serviceId) ?? []).map(({ way, reach, note }) => (
                  <span key={way.id} className="block small soft">
                    {way.label}
                    {reach
                      ? `: ${quantity(reach.dependable.nominalKm, 'km', 0)} dependable, ${quantity(reach.typical.nominalKm, 'km', 0)} typical.`
                      : '.'}{' '}
                    {rich(note)}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
