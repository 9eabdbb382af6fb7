import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { ServiceId } from '../../../../core/model/services.ts';
import { causeId } from '../../../../core/redundancy/study.ts';
import { serviceOf } from '../../../../core/report/words.ts';
import { readableTree } from '../../../../core/treeDiagram/readableTree.ts';
import { nodesDown } from '../../../../core/treeDiagram/state.ts';
import { singlePointSentence, TREE_SCOPE, treeSvg } from '../../../../core/treeDiagram/treeSvg.ts';
import type { ReadableTree } from '../../../../core/treeDiagram/types.ts';
import { outcomeWords } from '../../../../core/treeDiagram/wording.ts';
import { Choice } from '../../../app/Choice.tsx';
import { fileStem } from '../../../app/fileActions.ts';
import { useHost } from '../../../host/context.ts';
import { useApp, useAppStore } from '../../../store/context.ts';
import { useAssessment, useStudy } from '../../../store/derived.ts';
import { shownProject } from '../../../store/store.ts';
import { TreeDiagram } from './TreeDiagram.tsx';
import './tree.css';

/** Why a service is lost, as a fault tree: choose a service, open and close branches, see a failure in it, take it away as SVG. */
export function TreeView() {
  const study = useStudy();
  const { redundancy } = useAssessment();
  const [chosen, choose] = useState<ServiceId | null>(null);
  const serviceId = redundancy.services.find((id) => id === chosen) ?? redundancy.services[0];
  const tree = useMemo(
    () => (serviceId ? readableTree(study, redundancy, serviceId) : null),
    [study, redundancy, serviceId],
  );
  const { down, sentence } = useDown(tree);
  if (!tree) return null;
  const options = redundancy.services.map((id) => ({ id, name: serviceOf(id).name }));
  return (
    <section className="panel-section fault-tree">
      <div className="fault-tree-head">
        <Choice
          label="Service"
          options={options}
          value={tree.serviceId}
          onChange={(id) => choose(redundancy.services.find((each) => each === id) ?? null)}
        />
        <SaveButton tree={tree} />
      </div>
      <p className="small">{singlePointSentence(tree)}</p>
      <p className="small" aria-live="polite">
        {sentence}
      </p>
      <TreeDiagram key={tree.serviceId} tree={tree} down={down} />
      <p className="small soft">{TREE_SCOPE}</p>
    </section>
  );
}

/** Stands where the sentence about a failure will, so that the diagram does not jump when one is shown. */
const HOW_TO = 'Choose a part to find it on the drawing, or a common cause (double ring) to see what it takes down.';

/** What of the tree the failure shown on the drawing takes down. */
function useDown(tree: ReadableTree | null): { readonly down: ReadonlySet<string>; readonly sentence: string } {
  const eventId = useApp((state) => state.eventId);
  const { redundancy } = useAssessment();
  return useMemo(() => {
    const row = redundancy.matrix.find(({ event }) => event.id === eventId && event.kind !== 'none');
    if (!row || !tree) return { down: new Set<string>(), sentence: tree?.top.children.length ? HOW_TO : '' };
    const down = nodesDown(tree, new Set([...row.event.downIds, causeId(row.event.id)]));
    const grade = row.states.find((state) => state.serviceId === tree.serviceId)?.grade;
    const outcome = outcomeWords(down.has(tree.top.id), grade);
    return { down, sentence: `${row.event.label}: ${outcome}. What is down is crossed out and marked “down”.` };
  }, [redundancy, eventId, tree]);
}

function SaveButton({ tree }: { tree: ReadableTree }) {
  const store = useAppStore();
  const host = useHost();
  const project = useApp(shownProject);
  const save = async (): Promise<void> => {
    const bytes = new TextEncoder().encode(treeSvg(project, tree));
    const suggestedName = `${fileStem(project)}-tree-${tree.serviceId}.svg`;
    const answer = await host.exportFile({ suggestedName, kind: 'svg', bytes });
    if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
    else if (answer.value) store.getState().say({ tone: 'plain', text: `Exported ${answer.value.name}` });
  };
  return (
    <Button className="button" onPress={save}>
      Save as SVG
    </Button>
  );
}
