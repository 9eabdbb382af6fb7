import type { Gate } from '../faultTree/types.ts';
import type { Subject } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';

/**
 * One place of a diagram. A `gate` says what is lost and why; an `event` is a part that is down; a `cause` takes several
 * parts at once; a `reference` stands for a branch drawn elsewhere in the same diagram; `certain` is gone as drawn.
 */
export interface TreeNode {
  /** Its own within the diagram, and the same for the same boat. */
  readonly id: string;
  readonly kind: 'gate' | 'event' | 'cause' | 'reference' | 'certain';
  /** What it is in the failure model: event, cause or gate. */
  readonly modelId: string;
  /** A sentence or a name, from the tags of the project. */
  readonly label: string;
  /** What the drawing shows of it. */
  readonly subjects: readonly Subject[];
  readonly op: Gate['op'];
  /** How many of the children must be down; only for `atleast`. */
  readonly k: number;
  readonly children: readonly TreeNode[];
  /** Its loss alone takes the service away. */
  readonly isAlone: boolean;
  /** Number of an event that is drawn in more than one place; the same number is the same thing. */
  readonly mark: number | null;
  /** How often it is drawn or, for a lettered branch, used. */
  readonly places: number;
  /** Letter of a branch that is drawn once and used in several places, at the branch and at each reference. */
  readonly letter: string | null;
  /** Id of the node a reference stands for. */
  readonly target: string | null;
  /** What else is to be said of it. */
  readonly remark: string;
}

/** Why a service is lost, for people: says the same as the service's tree in the failure model. */
export interface ReadableTree {
  readonly serviceId: ServiceId;
  readonly serviceName: string;
  readonly top: TreeNode;
}
