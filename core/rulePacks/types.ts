import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project, RedundancySettings, Subject } from '../model/project.ts';
import type { FeedResult } from '../power/types.ts';
import type { Build } from '../redundancy/build.ts';
import type { FailureStudy, Redundancy } from '../redundancy/types.ts';
import type { RichText } from '../units/quantity.ts';

export type SeaArea = RedundancySettings['seaArea'];

export const VERDICTS = ['met', 'not-met', 'cannot-tell', 'does-not-apply'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What the drawing says to one rule. Never a verdict on the boat. */
export interface Answer {
  readonly verdict: Verdict;
  /** Names the things and figures it rests on; where it cannot be told, what one would have to look at. */
  readonly because: RichText;
  readonly subjects: readonly Subject[];
}

/** What the stages before found; all a rule may look at. */
export interface PackInput {
  readonly project: Project;
  readonly index: ProjectIndex;
  readonly seaArea: SeaArea;
  /** Paths on which nothing is to be removed; one may need a switch set over first. */
  readonly paths: readonly PathBudget[];
  readonly feeds: readonly FeedResult[];
  readonly redundancy: Redundancy;
  readonly build: Build;
  /** Worked out when the first rule asks. */
  readonly study: () => FailureStudy;
}

/** How the text of a rule is known here. */
export type RuleBasis = 'read' | 'second-hand' | 'memory';

/** One dated and cited requirement, told in our own words, with the check that the drawing allows. */
export interface PackRule {
  readonly id: string;
  /** Heading it stands under within its pack. */
  readonly theme: string;
  readonly title: string;
  readonly clause: string;
  readonly edition: string;
  readonly source: string;
  /** Law and guidance for the vessels they name; a race rule for those who enter. */
  readonly strength: 'law' | 'guide' | 'race';
  readonly basis: RuleBasis;
  /** Whom the text names. */
  readonly appliesTo: string;
  /** Sea areas it is for; all where left out. */
  readonly seaAreas?: readonly SeaArea[];
  /** What of it no document of this kind records. */
  readonly unseen: string;
  readonly check: (input: PackInput) => Answer;
}

/** Rules of one origin, switched on together. */
export interface RulePack {
  readonly id: string;
  readonly name: string;
  readonly edition: string;
  /** Whom it binds; almost never a private pleasure boat. */
  readonly binds: string;
  readonly source: string;
  /** Whether its verdicts turn on the sea area. */
  readonly asksSeaArea: boolean;
  readonly rules: readonly PackRule[];
}

export interface RuleResult extends Answer {
  readonly rule: PackRule;
}

export interface PackResult {
  readonly pack: RulePack;
  readonly results: readonly RuleResult[];
  readonly counts: Readonly<Record<Verdict, number>>;
}
