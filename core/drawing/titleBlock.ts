import type { Project } from '../model/project.ts';
import { formatText } from '../units/format.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { q } from '../units/quantity.ts';
import { line, path, rectPath, text } from './shapes.ts';
import { fitted } from './textWidth.ts';
import type { Projection, Shape } from './types.ts';

/** A sheet to be framed. Lengths mm. */
export interface SheetFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly projection: Projection;
  readonly preferences: UnitPreferences;
  readonly sheet: number;
  readonly sheets: number;
}

/** Size of the title block, mm. */
export const TITLE_BLOCK = { widthMm: 112, heightMm: 32, marginMm: 6 } as const;

/** Scale of a drawing in mm as the trade writes it, e.g. `1:75`. */
export function scaleText(projection: Projection): string {
  return `1:${Math.round(1000 / projection.scale)}`;
}

/** Frame and title block of a sheet in mm: what the drawing shows, to which scale and limit, and who has the last word. */
export function titleBlock(project: Project, frame: SheetFrame): readonly Shape[] {
  const { widthMm, heightMm } = frame;
  const { widthMm: blockW, heightMm: blockH, marginMm } = TITLE_BLOCK;
  const right = widthMm - marginMm;
  const bottom = heightMm - marginMm;
  const left = right - blockW;
  const top = bottom - blockH;
  const middle = left + blockW * 0.62;
  const row = blockH / 4;
  const ink = (width: number) => ({ layer: 'labels', stroke: 'ink', width }) as const;
  const shapes: Shape[] = [
    path(rectPath(marginMm - 1.5, marginMm - 1.5, right + 1.5, bottom + 1.5), ink(0.35)),
    path(rectPath(marginMm, marginMm, right, bottom), ink(0.13)),
    path(rectPath(left, top, right, bottom), { ...ink(0.25), fill: 'paper' }),
    ...[1, 2, 3].map((index) => line({ x: left, y: top + index * row }, { x: right, y: top + index * row }, ink(0.13))),
    line({ x: middle, y: top + row }, { x: middle, y: bottom }, ink(0.13)),
  ];
  const write = (content: string, x: number, index: number, width: number, bold = false): void => {
    const at = { x: x + 2, y: top + index * row + row * 0.64 };
    shapes.push(text(fitted(content, 2.6, width - 4, bold), at, { layer: 'labels', size: 2.6, ink: 'ink', bold }));
  };
  write(blockTitle(project, frame.preferences), left, 0, blockW, true);
  write('Profile, starboard side', left, 1, middle - left);
  write(`Scale ${scaleText(frame.projection)}`, middle, 1, right - middle);
  write(limitText(project, frame.preferences), left, 2, middle - left);
  write(`Revision ${project.revision}`, middle, 2, right - middle);
  write('A licensed installer and local rules govern', left, 3, middle - left);
  write(`Sheet ${frame.sheet} of ${frame.sheets}`, middle, 3, right - middle);
  return shapes;
}

function blockTitle(project: Project, preferences: UnitPreferences): string {
  const { name, loaM, kind, hullMaterial } = project.boat;
  const material = hullMaterial === 'grp' ? 'GRP' : hullMaterial;
  return formatText(
    [`${name} · `, q(loaM, 'm'), ` ${material} ${kind.replace('-', ' ')} · ${project.layoutName}`],
    preferences,
  );
}

function limitText(project: Project, preferences: UnitPreferences): string {
  const limitDb = project.settings.feederLossLimitDb;
  const lostPercent = 100 * (1 - 10 ** (-limitDb / 10));
  return formatText(['Loss limit ', q(limitDb, 'dB'), ' (', q(lostPercent, 'percent'), ')'], preferences);
}
