import type { Subject } from '../model/project.ts';

/** What a stroke or fill stands for; each output maps it to its own ink. Never the only thing that tells kinds apart. */
export type Ink =
  | 'none'
  | 'paper'
  | 'ink'
  | 'boat'
  | 'boat-faint'
  | 'grid'
  | 'grid-text'
  | 'water'
  | 'run'
  | 'run-selected'
  | 'feed'
  | 'link'
  | 'finding'
  | 'lost'
  | 'live'
  | 'accent';

interface ShapeBase {
  /** What a click on it means; absent for pure background. */
  readonly subject?: Subject;
  readonly layer: 'backdrop' | 'boat' | 'installation' | 'labels' | 'marks';
  /** 0..1, for what a failure has taken away. */
  readonly opacity?: number;
}

/**
 * A vector shape in drawing units (px on screen, mm on the sheet), y down. `d` is an SVG path of M, L, C, Q, A and Z.
 * All outputs (canvas, SVG, PDF) draw these and nothing else.
 */
export type Shape =
  | (ShapeBase & {
      readonly kind: 'path';
      readonly d: string;
      readonly stroke: Ink;
      readonly fill: Ink;
      readonly width: number;
      readonly dash?: readonly number[];
    })
  | (ShapeBase & {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly stroke: Ink;
      readonly fill: Ink;
      readonly width: number;
    })
  | (ShapeBase & {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly bold?: boolean;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly ink: Ink;
      /** Paint a paper-coloured outline behind the letters. */
      readonly halo?: boolean;
      /** Degrees, clockwise. */
      readonly rotate?: number;
    });

/** Where boat metres land in drawing units: X = originX - x * scale (bow to the right), Y = originY - z * scale. */
export interface Projection {
  readonly originX: number;
  readonly originY: number;
  /** Drawing units per metre. */
  readonly scale: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly projection: Projection;
  readonly shapes: readonly Shape[];
}
