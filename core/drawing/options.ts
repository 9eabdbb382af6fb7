import type { Finding } from '../audit/types.ts';
import type { PathBudget } from '../links/types.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import type { Projection } from './types.ts';

/** What of the drawing is shown. */
export interface ShownParts {
  readonly grid: boolean;
  readonly boat: boolean;
  readonly labels: boolean;
  readonly balloons: boolean;
  readonly findingMarks: boolean;
  readonly feeds: boolean;
  readonly links: boolean;
  readonly places: boolean;
}

/** Everything shown; for the sheet and for a start. */
export const SHOW_ALL: ShownParts = {
  grid: true,
  boat: true,
  labels: true,
  balloons: true,
  findingMarks: true,
  feeds: true,
  links: true,
  places: false,
};

/** What one failure takes away. Keys are `kind:id` of subjects; masts by id. */
export interface FailureView {
  readonly lost: ReadonlySet<string>;
  readonly live: ReadonlySet<string>;
  readonly mastsDown?: ReadonlySet<string>;
  readonly water?: WaterAboard;
}

/** Water inside the boat up to a level, m above the waterline, between the ends of each flooded compartment. */
export interface WaterAboard {
  readonly levelZM: number;
  readonly spans: readonly { readonly xForeM: number; readonly xAftM: number; readonly soleZM: number }[];
}

export interface ProfileOptions {
  /** Size of the drawing, drawing units. */
  readonly width: number;
  readonly height: number;
  readonly projection: Projection;
  /** Size of the labels, drawing units: 11 px on screen, about 2.6 mm on paper. */
  readonly textSize: number;
  readonly preferences: UnitPreferences;
  /** Keys `kind:id`. */
  readonly selection?: ReadonlySet<string>;
  readonly failure?: FailureView;
  readonly show: ShownParts;
}

/** What the drawing needs of an assessment. */
export interface DrawnResults {
  readonly paths: readonly PathBudget[];
  readonly findings: readonly Finding[];
}

/** Key of a subject in the sets of these options. */
export const subjectKey = (subject: { readonly kind: string; readonly id: string }): string =>
  `${subject.kind}:${subject.id}`;
