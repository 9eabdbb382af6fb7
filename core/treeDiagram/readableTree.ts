import type { Cause, FaultModel } from '../faultTree/types.ts';
import type { Subject } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { FailureStudy, Redundancy } from '../redundancy/types.ts';
import { type Draft, finished } from './drafts.ts';
import { aloneBelow, downIn, type PlainGates, plainGates } from './plain.ts';
import type { ReadableTree } from './types.ts';
import { serviceName, type Wording, wordingOf } from './wording.ts';

/** A branch met again is drawn again where it has fewer ends than this; else it is referred to. */
const LEAST_ENDS_TO_REFER = 3;

/**
 * The tree of a service as people read it: the same function of parts and common causes as the service's tree in the failure
 * model, without what says nothing. A common cause stands where it first takes a whole branch and nowhere below that.
 * @param study of the same project as `redundancy`
 * @throws RangeError for a service that is not shown for this boat
 */
export function readableTree(study: FailureStudy, redundancy: Redundancy, serviceId: ServiceId): ReadableTree {
  const top = study.tops.get(serviceId);
  if (top === undefined)
    throw new RangeError(`The service "${serviceId}" is not shown for this boat: ask for one that is.`);
  const wording = wordingOf(study, redundancy);
  const gates = plainGates(study.model.gates, top, wording.wayOf);
  const draft = gates ? new Planter(study.model, gates, top, wording).plant() : secure(top, wording);
  const remark = remarkOfTop(study, redundancy, serviceId, gates, top);
  return { serviceId, serviceName: serviceName(serviceId), top: finished({ ...draft, remark }) };
}

function remarkOfTop(
  { model }: FailureStudy,
  { matrix }: Redundancy,
  serviceId: ServiceId,
  gates: PlainGates | null,
  top: string,
): string {
  if (!gates) return 'nothing drawn can take it away';
  if (downIn(gates, new Set())(top)) {
    const reason = matrix[0]?.states.find((state) => state.serviceId === serviceId)?.reason;
    return reason ? `Lost as drawn. ${reason}` : 'Lost as drawn.';
  }
  return model.gates.get(top)?.inputs.length === 1 ? 'it has one way only' : '';
}

const secure = (top: string, wording: Wording): Draft => ({
  ...EMPTY,
  key: top,
  modelId: top,
  label: wording.gate(top),
});

const EMPTY = {
  kind: 'gate',
  op: 'or',
  k: 0,
  subjects: [] as readonly Subject[],
  children: [] as readonly Draft[],
  isAlone: false,
  ends: 0,
  target: null,
  remark: '',
} as const;

/** Grows the drafts of a diagram from plain gates, putting each common cause where it belongs. */
class Planter {
  private readonly gates: PlainGates;
  private readonly top: string;
  private readonly wording: Wording;
  private readonly causes: readonly Cause[];
  /** What each cause takes down by itself, by cause. */
  private readonly downBy: ReadonlyMap<Cause, (id: string) => boolean>;
  /** What hits a thing, by its id. */
  private readonly hits = new Map<string, Cause[]>();
  private readonly touching = new Map<string, ReadonlySet<Cause>>();
  private readonly drawn = new Map<string, Draft>();
  private readonly alone: ReadonlySet<string>;
  private readonly isLostAsDrawn: boolean;

  constructor(model: FaultModel, gates: PlainGates, top: string, wording: Wording) {
    this.gates = gates;
    this.top = top;
    this.wording = wording;
    this.causes = model.causes;
    this.downBy = new Map(model.causes.map((cause) => [cause, downIn(gates, new Set(cause.hits))] as const));
    for (const cause of model.causes)
      for (const id of new Set(cause.hits)) this.hits.set(id, [...(this.hits.get(id) ?? []), cause]);
    this.isLostAsDrawn = downIn(gates, new Set())(top);
    this.alone = aloneBelow(gates, top);
  }

  plant(): Draft {
    return this.branch(this.top, new Set(this.causes));
  }

  /** @param active causes that have not been put anywhere above */
  private branch(id: string, active: ReadonlySet<Cause>): Draft {
    const touching = [...this.touchingBelow(id)].filter((cause) => active.has(cause));
    const here = touching.filter((cause) => this.downBy.get(cause)?.(id));
    const key = [id, ...touching.map((cause) => cause.id)].join('\n');
    const known = this.drawn.get(key);
    if (known && known.ends >= LEAST_ENDS_TO_REFER) {
      return { ...known, kind: 'reference', children: [], ends: 1, target: known };
    }
    const made = this.grown(id, key, here, new Set(touching.filter((cause) => !here.includes(cause))));
    this.drawn.set(key, made);
    return made;
  }

  private grown(id: string, key: string, here: readonly Cause[], below: ReadonlySet<Cause>): Draft {
    const causes = here.map((cause) => this.causeDraft(cause));
    const gate = this.gates.get(id);
    if (gate === undefined || gate.inputs.length === 0) return this.withCauses(id, key, this.leaf(id), causes);
    const grown = gate.inputs.map((input) => this.branch(input, below));
    const children = gate.op === 'atleast' ? grown : leavesFirst(distinct(grown));
    if (gate.op === 'or') return this.gateDraft(id, key, 'or', 0, leavesFirst([...children, ...causes]));
    if (causes.length === 0) return this.gateDraft(id, key, gate.op, gate.k, children);
    const label = this.wording.allGone(id, children.length);
    return this.withCauses(id, key, this.gateDraft(id, `${key}\nall`, gate.op, gate.k, children, label), causes);
  }

  /** What causes take besides: any one of them, or the thing itself. */
  private withCauses(id: string, key: string, inner: Draft, causes: readonly Draft[]): Draft {
    if (causes.length === 0) return inner;
    const children = leavesFirst([inner, ...causes]);
    const label = this.gates.has(id) ? this.wording.gate(id) : `${this.wording.event(id)}, is down`;
    return this.gateDraft(id, key, 'or', 0, children, label);
  }

  /** A gate of one input says no more than that input, but for the top, which keeps its name. */
  private gateDraft(
    id: string,
    key: string,
    op: Draft['op'],
    k: number,
    children: readonly Draft[],
    label = this.wording.gate(id),
  ): Draft {
    const [only] = children;
    if (children.length === 1 && only && op !== 'atleast' && id !== this.top) return only;
    const ends = children.reduce((sum, child) => sum + child.ends, 0);
    return { ...this.named(id, key), label, kind: 'gate', op, k, children, ends };
  }

  private leaf(id: string): Draft {
    if (this.gates.has(id))
      return { ...this.named(id, id), kind: 'certain', isAlone: false, remark: 'as drawn', ends: 1 };
    return { ...this.named(id, id), kind: 'event', label: this.wording.event(id), ends: 1 };
  }

  private causeDraft(cause: Cause): Draft {
    const isAlone = !this.isLostAsDrawn && this.downBy.get(cause)?.(this.top) === true;
    return { ...this.named(cause.id, cause.id), kind: 'cause', label: this.wording.event(cause.id), isAlone, ends: 1 };
  }

  private named(id: string, key: string): Draft {
    const subjects = this.wording.subjects(id);
    return { ...EMPTY, key, modelId: id, label: this.wording.gate(id), subjects, isAlone: this.alone.has(id) };
  }

  private touchingBelow(id: string): ReadonlySet<Cause> {
    const known = this.touching.get(id);
    if (known) return known;
    const found = new Set(this.hits.get(id) ?? []);
    for (const input of this.gates.get(id)?.inputs ?? [])
      for (const cause of this.touchingBelow(input)) found.add(cause);
    this.touching.set(id, found);
    return found;
  }
}

/** Single things before branches, so that a line to a single thing never runs past a whole branch. */
function leavesFirst(drafts: readonly Draft[]): readonly Draft[] {
  const isBranch = ({ kind }: Draft): boolean => kind === 'gate' || kind === 'reference';
  return [...drafts.filter((draft) => !isBranch(draft)), ...drafts.filter(isBranch)];
}

function distinct(drafts: readonly Draft[]): readonly Draft[] {
  const first = new Map<string, Draft>();
  for (const draft of drafts) if (!first.has(draft.key)) first.set(draft.key, draft);
  return [...first.values()];
}
