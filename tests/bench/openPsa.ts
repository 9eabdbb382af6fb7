import type { FaultTree, Gate } from '../../core/faultTree/types.ts';

/**
 * A fault tree as an Open-PSA model (the open exchange format of fault-tree programs), for a general-purpose analyser. Names
 * become numbers, because the format allows no colons or blanks in them; a cause becomes an event beside what it hits; only
 * what the top hangs on is written, for a gate that nobody uses would be analysed as a top of its own.
 */
export function openPsaOf(tree: FaultTree, probabilityOf: ReadonlyMap<string, number>): string {
  const writer = new Writer(tree, probabilityOf);
  writer.written(tree.top);
  return writer.model();
}

class Writer {
  private readonly tree: FaultTree;
  private readonly probabilityOf: ReadonlyMap<string, number>;
  private readonly causesOf = new Map<string, string[]>();
  private readonly known = new Map<string, string>();
  private readonly gates: string[] = [];
  private readonly events: string[] = [];

  constructor(tree: FaultTree, probabilityOf: ReadonlyMap<string, number>) {
    this.tree = tree;
    this.probabilityOf = probabilityOf;
    for (const { id, hits } of tree.causes) {
      for (const hit of new Set(hits)) this.causesOf.set(hit, [...(this.causesOf.get(hit) ?? []), id]);
    }
  }

  /** How others refer to an event or gate; it is written when it is first asked for. */
  written(id: string): string {
    const known = this.known.get(id);
    if (known !== undefined) return known;
    const gate = this.tree.gates.get(id);
    const own = gate
      ? this.gate(
          formula(
            gate,
            gate.inputs.map((input) => this.written(input)),
          ),
        )
      : this.event(id);
    const causes = (this.causesOf.get(id) ?? []).map((cause) => this.written(cause));
    const reference = causes.length === 0 ? own : this.gate(`<or>${own}${causes.join('')}</or>`);
    this.known.set(id, reference);
    return reference;
  }

  model(): string {
    const { gates, events } = this;
    const tree = `<define-fault-tree name="tree">\n${gates.join('\n')}\n</define-fault-tree>`;
    return `<?xml version="1.0"?>\n<opsa-mef>\n${tree}\n<model-data>\n${events.join('\n')}\n</model-data>\n</opsa-mef>\n`;
  }

  private gate(body: string): string {
    const name = `g${this.gates.length}`;
    this.gates.push(`<define-gate name="${name}">${body}</define-gate>`);
    return `<gate name="${name}"/>`;
  }

  private event(id: string): string {
    const name = `e${this.events.length}`;
    const p = this.probabilityOf.get(id) ?? 0;
    this.events.push(`<define-basic-event name="${name}"><float value="${p}"/></define-basic-event>`);
    return `<basic-event name="${name}"/>`;
  }
}

/** A gate of one input is that input, one of none a constant. */
function formula({ op, k }: Gate, parts: readonly string[]): string {
  if (op === 'atleast') return `<atleast min="${k}">${parts.join('')}</atleast>`;
  if (parts.length === 0) return `<constant value="${op === 'and'}"/>`;
  return parts.length === 1 ? (parts[0] as string) : `<${op}>${[...new Set(parts)].join('')}</${op}>`;
}
