import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { projectSchema } from '../../../core/model/project.ts';

const ROOT = join(import.meta.dirname, '../../..');

interface Definition {
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly valueType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
}

/** Every key in a schema. */
function namesIn(schema: z.ZodType, names = new Set<string>(), seen = new Set<z.ZodType>()): Set<string> {
  if (seen.has(schema)) return names;
  seen.add(schema);
  const { shape, element, innerType, valueType, options } = schema.def as unknown as Definition;
  for (const [key, entry] of Object.entries(shape ?? {})) {
    names.add(key);
    namesIn(entry, names, seen);
  }
  for (const inner of [element, innerType, valueType, ...(options ?? [])]) if (inner) namesIn(inner, names, seen);
  return names;
}

describe('docs/format.md', () => {
  it('names every field of the schema', () => {
    const text = readFileSync(join(ROOT, 'docs/format.md'), 'utf8');
    const named = new Set([...text.matchAll(/`([^`\n]+)`/g)].map(([, name]) => name));
    const names = namesIn(projectSchema);
    expect(names.size).toBeGreaterThan(150);
    expect([...names].filter((name) => !named.has(name))).toEqual([]);
  });
});

describe('the demo boats', () => {
  const folder = join(ROOT, 'assets/demo');

  it.each(readdirSync(folder).filter((name) => name.endsWith('.backstay')))(
    '%s loads without a note and is written as the program writes it',
    (name) => {
      const text = readFileSync(join(folder, name), 'utf8');
      const result = parseProject(text);
      if (!result.ok) expect(result.problems).toEqual([]);
      else {
        expect(result.notes).toEqual([]);
        expect(serialiseProject(result.project)).toBe(text);
      }
    },
  );
});
