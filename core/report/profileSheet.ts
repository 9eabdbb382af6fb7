import type { Assessment } from '../assess.ts';
import { SHOW_ALL } from '../drawing/options.ts';
import { PALETTES } from '../drawing/palette.ts';
import { drawProfile } from '../drawing/profile.ts';
import { fitProjection } from '../drawing/projection.ts';
import { svgOf } from '../drawing/svg.ts';
import { TITLE_BLOCK, titleBlock } from '../drawing/titleBlock.ts';
import type { Drawing, Projection } from '../drawing/types.ts';
import type { Project } from '../model/project.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { movedShape } from './movedShape.ts';
import { drawingArea, type PageTurn, pageSize } from './pageSize.ts';

/** Scales a drawing office uses (ISO 5455 and the half steps the trade adds), as 1 to n. */
const SCALES = [
  10, 15, 20, 25, 30, 40, 50, 60, 75, 80, 100, 120, 125, 150, 175, 200, 250, 300, 400, 500, 750, 1000,
] as const;
/** Text height on paper, mm: the least that ISO 3098 allows is 2.5. */
const TEXT_MM = 2.5;
const MARGIN_MM = 2;

/** The profile for the drawing page of the sheet, in mm, at a round scale; the page is turned as shows the boat larger. */
export function sheetDrawing(
  project: Project,
  assessment: Assessment,
  paper: 'A4' | 'Letter',
  preferences: UnitPreferences,
): { readonly drawing: Drawing; readonly page: PageTurn } {
  const page = betterTurn(project, (turn) => drawingArea(paper, turn));
  const { widthMm, heightMm } = drawingArea(paper, page);
  return { drawing: profile(project, assessment, preferences, widthMm, heightMm), page };
}

/** A boat with tall masts fills an upright page, a long low one a page on its side. */
function betterTurn(project: Project, area: (turn: PageTurn) => { widthMm: number; heightMm: number }): PageTurn {
  const scale = (turn: PageTurn): number => {
    const { widthMm, heightMm } = area(turn);
    return fitProjection(project, widthMm, heightMm, MARGIN_MM, TEXT_MM).scale;
  };
  return scale('flow') > scale('landscape') ? 'flow' : 'landscape';
}

/**
 * The profile as one SVG document the size of a sheet, framed, with title block and scale.
 * @param paper size of the sheet
 */
export function profileSvg(
  project: Project,
  assessment: Assessment,
  paper: 'A4' | 'Letter',
  preferences: UnitPreferences,
): string {
  const insetMm = TITLE_BLOCK.marginMm + MARGIN_MM;
  const area = (turn: PageTurn) => {
    const size = pageSize(paper, turn);
    return {
      widthMm: size.widthMm - 2 * insetMm,
      heightMm: size.heightMm - 2 * insetMm - TITLE_BLOCK.heightMm,
    };
  };
  const turn = betterTurn(project, area);
  const { widthMm, heightMm } = pageSize(paper, turn);
  const drawing = profile(project, assessment, preferences, area(turn).widthMm, area(turn).heightMm);
  const { projection } = drawing;
  const block = titleBlock(project, { widthMm, heightMm, projection, preferences, sheet: 1, sheets: 1 });
  const inset = drawing.shapes.map((shape) => movedShape(shape, insetMm, insetMm));
  const framed: Drawing = { ...drawing, width: widthMm, height: heightMm, shapes: [...inset, ...block] };
  return svgOf(framed, PALETTES.print, {
    title: `${project.boat.name}: profile, ${project.layoutName}`,
    description:
      `Side profile to scale with ${project.items.length} numbered items and ${project.runs.length} cable runs. ` +
      'The equipment list and cable schedule of the install sheet say what each number is.',
    unit: 'mm',
  });
}

function profile(
  project: Project,
  assessment: Assessment,
  preferences: UnitPreferences,
  width: number,
  height: number,
): Drawing {
  const fit = fitProjection(project, width, height, MARGIN_MM, TEXT_MM);
  return drawProfile(
    project,
    { paths: assessment.paths, findings: assessment.findings },
    { width, height, projection: roundScale(fit, width, height), textSize: TEXT_MM, preferences, show: SHOW_ALL },
  );
}

/** The next smaller scale of the drawing office, the middle of the sheet staying where it is. */
function roundScale(fit: Projection, width: number, height: number): Projection {
  const denominator = SCALES.find((each) => 1000 / each <= fit.scale * 1.0001);
  if (denominator === undefined) return fit;
  const scale = 1000 / denominator;
  const ratio = scale / fit.scale;
  return {
    scale,
    originX: width / 2 + (fit.originX - width / 2) * ratio,
    originY: height / 2 + (fit.originY - height / 2) * ratio,
  };
}
