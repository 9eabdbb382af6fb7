import type { PairGroup } from '../faultTree/pairs.ts';
import type { FaultModel } from '../faultTree/types.ts';
import type { Subject } from '../model/project.ts';
import type { Grade, ServiceId } from '../model/services.ts';

/** One physical thing that can be down. One node per thing, however many chains use it. */
export interface Component {
  readonly id: string;
  readonly kind:
    | 'radio'
    | 'antenna'
    | 'cable'
    | 'joint'
    | 'device'
    | 'structure'
    | 'feed'
    | 'breaker'
    | 'bank'
    | 'power-device'
    | 'position-source'
    | 'data-link'
    | 'equipment'
    | 'standalone';
  readonly label: string;
  readonly subject: Subject;
}

/** One success path of a service: everything in `hangsOn` must work. */
export interface Way {
  readonly id: string;
  readonly serviceId: ServiceId;
  readonly label: string;
  /** Best grade this way can give, and why it is not full. */
  readonly grade: Exclude<Grade, 'lost'>;
  readonly reason: string;
  readonly hangsOn: readonly string[];
  /**
   * A portable set taken off its mount. Counted only in events that make somebody carry it out: its ship's supply is
   * gone, it was unplugged for a storm, or the crew take to the raft. Never part of the failure tree.
   */
  readonly carried?: boolean;
  /** Items whose use this way is, for the drawing: radio, antenna, runs. */
  readonly subjects: readonly Subject[];
  /** The set it is a use of. */
  readonly itemId: string;
  /** Signal path it goes by; null for a set with its own antenna, and for an emergency antenna. */
  readonly pathId: string | null;
  /** Emergency antenna it goes by, plugged into the set by hand. */
  readonly emergencyAntennaId?: string;
}

export interface ServiceState {
  readonly serviceId: ServiceId;
  readonly grade: Grade;
  /** One sentence: by what means, or why not. */
  readonly reason: string;
  /** Ids of the ways still alive. */
  readonly liveWayIds: readonly string[];
}

export interface FailureEvent {
  readonly id: string;
  readonly label: string;
  readonly kind:
    | 'none'
    | 'mast'
    | 'all-masts'
    | 'structure'
    | 'breaker'
    | 'device'
    | 'bank'
    | 'flood'
    | 'lightning'
    | 'position-source'
    | 'data-bus'
    | 'compartment-fire'
    | 'abandon'
    | 'own';
  /** Ids of the components that are down. */
  readonly downIds: readonly string[];
  readonly note: string;
  /** Where water stands, for a flood. */
  readonly water?: Water;
}

/** Water inside the boat: how high, m above the waterline, and in which compartments. */
export interface Water {
  readonly levelZM: number;
  readonly compartmentIds: readonly string[];
}

export interface MatrixRow {
  readonly event: FailureEvent;
  /** One state per shown service, in the order of `Redundancy.services`. */
  readonly states: readonly ServiceState[];
}

/** A component that alone takes a service away. */
export interface SinglePoint {
  readonly componentId: string;
  readonly serviceIds: readonly ServiceId[];
}

export interface Redundancy {
  readonly services: readonly ServiceId[];
  readonly components: readonly Component[];
  readonly ways: readonly Way[];
  readonly singlePoints: readonly SinglePoint[];
  readonly matrix: readonly MatrixRow[];
  /** Events that could happen to this boat and that the user has left out. */
  readonly excluded: readonly FailureEvent[];
}

/** What takes a service away, order by order: components and common causes in one list of events. */
export interface ServiceCuts {
  readonly serviceId: ServiceId;
  /** Lost as drawn: no way at all. */
  readonly lostFromStart: boolean;
  /** Number of minimal cut sets by order, index 0 for single points; up to the order looked for. */
  readonly countByOrder: readonly number[];
  readonly singles: readonly string[];
  /** Pairs told shortly: any of these together with any of those. */
  readonly pairs: readonly PairGroup[];
  readonly triples: readonly (readonly string[])[];
  /** How many triples there are; `triples` lists them only while they are few. */
  readonly tripleCount: number;
}

/** A chance with its interval; nearly always an assumption, and then said so. */
export interface ChanceOf {
  /** Component or event id. */
  readonly id: string;
  readonly label: string;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly basis: 'published' | 'assumed' | 'stated';
  readonly source: string;
}

/** What one component or cause is to a service. */
export interface RiskRow {
  readonly id: string;
  readonly label: string;
  readonly subject: Subject | null;
  readonly chance: ChanceOf;
  readonly birnbaum: number;
  /** Share of the outages that would go if it were perfect, 0 to 1; null where there are none. */
  readonly ifPerfect: number | null;
  /** Share of the outages it takes part in (Fussell and Vesely), 0 to 1; null where there are none. */
  readonly takesPart: number | null;
}

/** How often a service is down on a passage. */
export interface ServiceRisk {
  readonly serviceId: ServiceId;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** False where only bounds are known. */
  readonly isExact: boolean;
  /** Largest share first. */
  readonly rows: readonly RiskRow[];
}

/** A means of sending a distress alert ashore, by one radio service. */
export interface AlertMeans {
  readonly id: string;
  readonly radioService: 'vhf-dsc' | 'mf-hf-dsc' | 'satellite' | 'beacon-406';
  readonly label: string;
  readonly itemId: string;
  /** Components all of its ways hang on. */
  readonly hangsOn: readonly string[];
  /** Common causes that alone take it away. */
  readonly causes: readonly string[];
}

/** Whether there are two separate and independent means, each of another radio service (GMDSS functional requirement). */
export interface Independence {
  readonly verdict: 'independent' | 'shared' | 'one-service' | 'none';
  readonly sentence: string;
  /** Every set that can send a distress alert, whether or not the shore hears it from there. */
  readonly means: readonly AlertMeans[];
  /** Those whose service reaches the shore from the boat's sea area. */
  readonly countedIds: readonly string[];
  /** The best pair, and what both hang on or are lost by. */
  readonly pair: {
    readonly first: string;
    readonly second: string;
    readonly sharedComponents: readonly string[];
    readonly sharedCauses: readonly string[];
  } | null;
}

/** Name of an event of the trees; a common cause is no one thing of the drawing. */
export interface TreeLabel {
  readonly label: string;
  readonly subject: Subject | null;
}

/** The study of a boat's failures beyond the matrix; worked out when it is looked at. */
export interface FailureStudy {
  readonly cuts: readonly ServiceCuts[];
  /** What takes a service from full, whether or not it is lost by it; worked out when asked for. @throws RangeError as `riskOf` */
  readonly cutsOfFull: (serviceId: ServiceId) => ServiceCuts;
  /** Worked out when asked for, and the same object for the same service; a RangeError for a service that is not shown. */
  readonly riskOf: (serviceId: ServiceId) => ServiceRisk;
  /** What to call each event of `model`, and what of the drawing it is: by component id, or `cause:` and the event's id. */
  readonly labels: ReadonlyMap<string, TreeLabel>;
  readonly chances: readonly ChanceOf[];
  readonly independence: Independence;
  readonly model: FaultModel;
  /** Gate of each service in `model`. */
  readonly tops: ReadonlyMap<ServiceId, string>;
}
