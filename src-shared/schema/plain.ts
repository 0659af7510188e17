/**
 * The way back through a schema: from a value in memory to the plain data that
 * it is written as, keys in the order of the schema.
 *
 * The library's own `encode` checks as it goes and refuses. Work is written and
 * kept aside whatever it is, so nothing is checked here; whether it could be
 * opened again is asked when it is saved.
 */
import type { z } from './zod.ts';

/** What any schema that a file is made of is defined by. */
type Definition = z.core.$ZodTypes['_zod']['def'];

/** The plain data of `value`, which the schema decodes to that value again if it takes it. */
export function plainOf<S extends z.core.$ZodType>(schema: S, value: ReadonlyDeep<z.output<S>>): z.input<S> {
  return plain(schema, value) as z.input<S>;
}

function plain(schema: z.core.$ZodType, value: unknown): unknown {
  const definition = schema._zod.def as Definition;
  switch (definition.type) {
    case 'object':
      return plainFields(definition.shape, value as Record<string, unknown>);
    case 'array':
      return (value as readonly unknown[]).map((item) => plain(definition.element, item));
    case 'nullable':
    case 'optional':
      return value === null || value === undefined ? value : plain(definition.innerType, value);
    case 'union': {
      const option = definition.options.find((one) => fits(one, value));
      return option ? plain(option, value) : value;
    }
    case 'pipe': {
      const { in: written, reverseTransform } = definition as z.core.$ZodCodecDef;
      return plain(written, reverseTransform(value, { value, issues: [] }));
    }
    default:
      return value;
  }
}

function plainFields(shape: z.core.$ZodShape, value: Record<string, unknown>): Record<string, unknown> {
  const fields: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(shape)) {
    if (value[key] !== undefined) fields[key] = plain(schema, value[key]);
  }
  return fields;
}

/** True if the value is of this kind of a union: told apart by their literals, or as the one that has no fields. */
function fits(option: z.core.$ZodType, value: unknown): boolean {
  const definition = option._zod.def as Definition;
  const hasFields = typeof value === 'object' && value !== null;
  if (definition.type !== 'object') return !hasFields;
  return (
    hasFields &&
    Object.entries(definition.shape).every(
      ([key, { _zod }]) =>
        _zod.def.type !== 'literal' || _zod.values?.has((value as Record<string, z.core.util.Primitive>)[key]),
    )
  );
}

/** A value whose every part is read-only: what a schema gives is never changed in place. Texts, numbers and bytes stay as they are. */
export type ReadonlyDeep<T> = T extends string | number | boolean | null | undefined | Uint8Array
  ? T
  : { readonly [Key in keyof T]: ReadonlyDeep<T[Key]> };
