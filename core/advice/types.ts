import type { Project, Subject } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { RichText } from '../units/quantity.ts';

/** What sort of change it is. */
export type ChangeKind =
  | 'second-feed'
  | 'high-battery'
  | 'own-battery'
  | 'own-breaker'
  | 'battery-up'
  | 'own-antenna'
  | 'second-antenna'
  | 'jumper'
  | 'splitter-kind'
  | 'position-link'
  | 'open-sky'
  | 'emergency-antenna'
  | 'spare';

/** A change to the boat that may remove a single point of failure; not yet tried. */
export interface Candidate {
  /** Stable for the same drawing. */
  readonly id: string;
  readonly kind: ChangeKind;
  /** What it is an answer to, e.g. `supply:vhf-1`: of several answers to one question the best stands first. */
  readonly question: string;
  /** One plain sentence with the tags of what it is about, without a full stop: also the name of the undo step. */
  readonly title: string;
  /** What to mind; work that can hurt is given to those who may do it. */
  readonly cautions: readonly string[];
  /** What is there now and is concerned, for the drawing. */
  readonly subjects: readonly Subject[];
  /** The project with the change made. Pure. @throws RefusedEdit when the drawing no longer allows it */
  readonly apply: (project: Project) => Project;
}

/** A thing that alone takes services away, and those that a change keeps from being lost by it alone. */
export interface Rescue {
  /** Component, or common cause as `cause:…`, or `lost:…` for a service with no way as drawn. */
  readonly pointId: string;
  readonly serviceIds: readonly ServiceId[];
}

/** Minimal cut sets of all services together, by their order. */
export interface CutCount {
  readonly singles: number;
  readonly pairs: number;
}

/** What a change does, measured on the model. */
export interface Effect {
  readonly rescues: readonly Rescue[];
  /** Services that hang on fewer single things, or have a way at last, in the order of the matrix. */
  readonly serviceIds: readonly ServiceId[];
  /** Over the services that have a way before and after; a service given its first way is not in the sums. */
  readonly before: CutCount;
  readonly after: CutCount;
  /** Cells of the failure matrix that rise and that fall by a grade or more. */
  readonly cellsBetter: number;
  readonly cellsWorse: number;
  /** Titles of grave (A) and soon-to-mend (B) remarks that go. */
  readonly clears: readonly Remark[];
  /** Whether parts of the change take alone a service that had a way before. */
  readonly bringsSingles: boolean;
  /** What becomes worse, each a sentence; empty when nothing does. */
  readonly worsens: readonly string[];
}

export interface Remark {
  readonly severity: 'A' | 'B';
  readonly title: string;
}

/** What is put in and taken out, read off the drawings before and after. */
export interface Material {
  readonly adds: readonly RichText[];
  readonly takesOut: readonly RichText[];
  /** Parts, cables, feeds and links added: of two changes that do the same the smaller goes first. */
  readonly count: number;
}

/** A change that has been tried. */
export interface RankedChange {
  readonly candidate: Candidate;
  readonly material: Material;
  readonly effect: Effect;
}

/** A single point of failure with the changes that free a service of it, best first. */
export interface PointAdvice {
  readonly pointId: string;
  readonly label: string;
  readonly subject: Subject | null;
  /** Services it takes away alone. */
  readonly serviceIds: readonly ServiceId[];
  readonly changes: readonly RankedChange[];
  /** Why no change is offered; null when one is. */
  readonly why: string | null;
}

/** Every change that was tried on a boat and helps. */
export interface Advice {
  /** How many changes were tried, those that did nothing included. */
  readonly tried: number;
  /** All that help, best first. */
  readonly changes: readonly RankedChange[];
  /** The best answer to each question, best first. */
  readonly best: readonly RankedChange[];
  readonly points: readonly PointAdvice[];
}

/** How far the trying has come. */
export interface AdviceProgress {
  readonly done: number;
  readonly total: number;
}
