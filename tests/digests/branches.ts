/**
 * The branches of a schema (each variant, each word of a list of words, yes
 * and no, there and not there, empty and not empty), and how often values take
 * them.
 */
import type { Schema } from './schemas.ts';

/** How often each branch was taken, by its path. */
export type Counts = Map<string, number>;

/** Every branch of the schema, none taken yet. */
export function branchesOf(schema: Schema): Counts {
  const counts: Counts = new Map();
  const visit = (at: Schema, path: string): void => {
    variantsOf(at).forEach((variant, index) => {
      counts.set(variantPath(path, variant, index), 0);
      visit(variant, variantPath(path, variant, index));
    });
    for (const word of wordsOf(at)) counts.set(`${path} = ${word}`, 0);
    for (const [name, property] of Object.entries(at.properties ?? {})) {
      if (!at.required?.includes(name))
        for (const there of ['there', 'not there']) counts.set(`${path}.${name} ${there}`, 0);
      visit(property, `${path}.${name}`);
    }
    if (at.items) {
      if (!at.minItems) for (const filled of ['empty', 'filled']) counts.set(`${path} ${filled}`, 0);
      visit(at.items, `${path}[]`);
    }
  };
  visit(schema, '');
  return counts;
}

/** Counts the branches that a value takes. Throws `Error` where it fits no variant. */
export function countBranches(schema: Schema, value: unknown, counts: Counts): void {
  const count = (branch: string): void => void counts.set(branch, (counts.get(branch) ?? 0) + 1);
  const visit = (at: Schema, of: unknown, path: string): void => {
    const variants = variantsOf(at);
    if (variants.length > 0) {
      const index = variants.findIndex((variant) => isLike(variant, of));
      const variant = variants[index];
      if (!variant) throw new Error(`${path}: ${JSON.stringify(of)} is none of its variants`);
      count(variantPath(path, variant, index));
      visit(variant, of, variantPath(path, variant, index));
    }
    if (wordsOf(at).length > 0) count(`${path} = ${String(of)}`);
    for (const [name, property] of Object.entries(at.properties ?? {})) {
      const own = (of as Record<string, unknown>)[name];
      if (!at.required?.includes(name)) count(`${path}.${name} ${own === undefined ? 'not there' : 'there'}`);
      if (own !== undefined) visit(property, own, `${path}.${name}`);
    }
    if (at.items) {
      const list = of as readonly unknown[];
      if (!at.minItems) count(`${path} ${list.length === 0 ? 'empty' : 'filled'}`);
      for (const item of list) visit(at.items, item, `${path}[]`);
    }
  };
  visit(schema, value, '');
}

function variantsOf({ anyOf, oneOf }: Schema): readonly Schema[] {
  return anyOf ?? oneOf ?? [];
}

function wordsOf({ enum: words, type }: Schema): readonly string[] {
  if (type === 'boolean') return ['true', 'false'];
  return (words ?? []).map(String);
}

/** Named by what tells it from the others: its `kind`, what it is placed `by`, or its type. */
function variantPath(path: string, { properties, type, const: only }: Schema, index: number): string {
  return `${path}<${String(properties?.kind?.const ?? properties?.by?.const ?? only ?? type ?? index)}>`;
}

/** Whether a value is meant for a variant: of its type, one of its words, with its `kind` and no other fields. */
function isLike({ type, const: only, enum: words, properties, required = [] }: Schema, value: unknown): boolean {
  if (only !== undefined) return value === only;
  if (words) return words.includes(value);
  if (type === 'null') return value === null;
  if (type === 'integer') return Number.isInteger(value);
  if (type === 'array') return Array.isArray(value);
  if (type !== 'object') return typeof value === type;
  if (typeof value !== 'object' || value === null) return false;
  const fields = Object.keys(value);
  const kind = properties?.kind?.const;
  return (
    required.every((name) => fields.includes(name)) &&
    fields.every((name) => properties?.[name] !== undefined) &&
    (kind === undefined || (value as { kind?: unknown }).kind === kind)
  );
}
