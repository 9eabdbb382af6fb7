import { useId, useRef } from 'react';
import { textWidth } from '../../../core/drawing/textWidth.ts';
import type { PathBudget, PathElement } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { subjectLabel } from '../../../core/report/words.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { inLanes, laneCount } from '../range/lanes.ts';
import { elementLengthM, isSameSubject, numbered } from './elements.ts';
import { percent, watts } from './figures.ts';
import { pathName } from './paths.ts';
import { namedElements, shareLeft, type TaperStep, taperSteps } from './taper.ts';

const HEIGHT = 84;
const TOP = 6;
const LEFT = 40;
const RIGHT = 44;
const LANE = 15;
const TEXT = 12;
/** Where the names under the band begin. */
const FOOT = TOP + HEIGHT + 16;

/** The power along the path as a band to scale: the height is what is left, the numbers are those of the table below. */
export function Taper({ project, path }: { project: Project; path: PathBudget }) {
  const { rich, quantity } = useFormat();
  const titleId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const lengthsM = path.elements.map((element) => elementLengthM(project, element));
  const steps = taperSteps(path.elements, lengthsM, { left: LEFT, width: width - LEFT - RIGHT, height: HEIGHT });
  const said = (share: number): string =>
    rich([path.txPowerW === null ? percent(100 * share) : watts(path.txPowerW * share)]);
  const { names, lanes } = placedNames(project, path, steps, width, (db) => quantity(db, 'dB'));
  const summary = path.elements.map(
    ({ label, lossDb, runningLossDb }, index) =>
      `${index + 1} ${label}: ${quantity(lossDb, 'dB')}, ${said(shareLeft(runningLossDb))} left`,
  );
  return (
    <div ref={box} className="taper">
      <svg width={width} height={FOOT + lanes * LANE + 4} role="img" aria-labelledby={`${titleId} ${titleId}-d`}>
        <title id={titleId}>{`Power along ${rich(pathName(project, path))}`}</title>
        <desc id={`${titleId}-d`}>{`${said(1)} at the start. ${summary.join('; ')}.`}</desc>
        <g transform={`translate(0 ${TOP})`}>
          {numbered(path.elements).map((each) => {
            const step = steps[each.number - 1];
            return step ? <Step key={each.key} element={each.element} number={each.number} step={step} /> : null;
          })}
          <path className="taper-base" d={`M${LEFT} ${HEIGHT}H${width - RIGHT}`} />
          <Ends
            path={path}
            limitShare={shareLeft(project.settings.feederLossLimitDb)}
            right={width - RIGHT}
            said={said}
          />
        </g>
        {names.map(({ index, atX, y }) => (
          <path key={index} className="taper-leader" d={`M${atX} ${FOOT - 2}V${y - 10}`} />
        ))}
        {names.map(({ index, left, y, text }) => (
          <text key={index} className="taper-name" x={left + 3} y={y}>
            {text}
          </text>
        ))}
      </svg>
    </div>
  );
}

/** Names of the elements that take most, under the band, in lanes. */
function placedNames(
  project: Project,
  path: PathBudget,
  steps: readonly TaperStep[],
  width: number,
  said: (lossDb: number) => string,
) {
  const tags = namedElements(path.elements, 4).flatMap((index) => {
    const [element, step] = [path.elements[index], steps[index]];
    if (!element || !step) return [];
    const name = element.kind === 'mismatch' ? 'mismatch' : subjectLabel(project, element.subject);
    const text = `${index + 1}  ${name}  −${said(element.lossDb)}`;
    return [{ index, text, atX: step.left + step.width / 2, width: textWidth(text, TEXT) + 6 }];
  });
  const placed = inLanes(tags, 0, width);
  const names = tags.map((tag, i) => {
    const { left, lane } = placed[i] ?? { left: 0, lane: 0 };
    return { ...tag, left, y: FOOT + (lane + 1) * LANE - 3 };
  });
  return { names, lanes: laneCount(placed) };
}

/** What goes in, what comes out, and where the limit is. */
function Ends({
  path,
  limitShare,
  right,
  said,
}: {
  path: PathBudget;
  limitShare: number;
  right: number;
  said: (share: number) => string;
}) {
  const left = shareLeft(path.lossDb);
  const hasLimit = path.txPowerW !== null;
  return (
    <g>
      {hasLimit ? <LimitLine y={HEIGHT * (1 - limitShare)} right={right} text={said(limitShare)} /> : null}
      <text className="taper-watts" x={LEFT - 5} y={11} textAnchor="end">
        {said(1)}
      </text>
      <text className="taper-watts" x={right + 5} y={endLabelY(HEIGHT * left, limitShare, hasLimit)}>
        {said(left)}
      </text>
    </g>
  );
}

/** The end label sits at the height of what is left, but clear of the limit's label. */
function endLabelY(heightOut: number, limitShare: number, hasLimit: boolean): number {
  const wanted = Math.min(HEIGHT, Math.max(11, HEIGHT - heightOut + 4));
  const limitY = HEIGHT * (1 - limitShare) + 4;
  if (!hasLimit || Math.abs(wanted - limitY) >= 14) return wanted;
  return wanted > limitY ? limitY + 14 : limitY - 14;
}

function LimitLine({ y, right, text }: { y: number; right: number; text: string }) {
  return (
    <g>
      <path className="taper-limit" d={`M${LEFT} ${y}H${right}`} />
      <text className="taper-limit-text" x={LEFT - 5} y={y + 4} textAnchor="end">
        {text}
      </text>
      <text className="taper-limit-text" x={right + 5} y={y + 4}>
        limit
      </text>
    </g>
  );
}

function Step({ element, number, step }: { element: PathElement; number: number; step: TaperStep }) {
  const store = useAppStore();
  const isSelected = useApp(({ selection }) => selection.some((subject) => isSameSubject(subject, element.subject)));
  const middle = step.left + step.width / 2;
  return (
    // The table below has a button for the same; this is the mouse's short cut.
    // biome-ignore lint/a11y/noStaticElementInteractions: the same is a button in the table
    <g onClick={() => store.getState().select([element.subject])}>
      <path className={`taper-step taper-step--${element.kind}${isSelected ? ' is-selected' : ''}`} d={step.shape} />
      <path className="taper-edge" d={`M${step.left} ${HEIGHT}V${HEIGHT - step.heightIn}`} />
      <text className="taper-number" x={middle} y={HEIGHT + 12} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}
