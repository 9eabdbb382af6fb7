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
    | 'abandon';
  /** Ids of the components that are down. */
  readonly downIds: readonly string[];
  readonly note: string;
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
}
