/**
 * What a schema finds wrong with a value from outside, as a code and numbers.
 *
 * The first rows are what any schema may find, the others rules between fields
 * that the models of the folders check. Adding a row makes the compiler ask for
 * its words.
 */
import { z } from './zod.ts';

/** What can be too large or too small: a number itself, a text in its letters, a list in its items. */
type Measured = 'number' | 'int' | 'string' | 'array';

export interface FaultFacts {
  type: { readonly expected: string; readonly received: string };
  value: { readonly allowed: readonly Primitive[] };
  /** None of the kinds that a thing comes in. */
  kind: { readonly allowed: readonly Primitive[] };
  'too-big': { readonly of: Measured; readonly most: number; readonly isIncluded: boolean };
  'too-small': { readonly of: Measured; readonly least: number; readonly isIncluded: boolean };
  pattern: { readonly pattern: string };
  format: { readonly format: string };
  keys: { readonly keys: readonly string[] };
  /** Nothing more can be said. */
  other: Record<string, never>;

  // Between fields
  twice: { readonly name: string };
  'too-many': { readonly most: number };
  'line-uneven': { readonly cells: number; readonly first: number };
  'yarn-missing': Record<string, never>;
  /** None of the colourways is the one that is knitted, or several are. */
  'not-one-knitted': { readonly knitted: number };
  'not-each-yarn': Record<string, never>;
  'yarn-twice': Record<string, never>;
  'main-in-stripe': Record<string, never>;
  'letter-without-yarn': { readonly letter: string };
  'underlays-too-large': Record<string, never>;
  'motif-missing': { readonly motif: string };
  'size-missing': { readonly size: string };
  'size-out-of-order': Record<string, never>;
  'as-in-all-sizes': Record<string, never>;
  /** Not one for each size, in their order. */
  'not-each-size': Record<string, never>;
  'not-each-section': Record<string, never>;
  'row-not-above': Record<string, never>;
  'below-first-row': Record<string, never>;
}

type Primitive = string | number | boolean | null;

export type FaultCode = keyof FaultFacts;

export type Fault = {
  readonly [Code in FaultCode]: { readonly code: Code; readonly facts: FaultFacts[Code] };
}[FaultCode];

/** A fault, and the way from the whole value to the field that has it; list items by their index. */
export interface FaultAt {
  readonly path: readonly (string | number)[];
  readonly fault: Fault;
}

type Path = readonly (string | number)[];

/** Refuses the value that is being checked or decoded: for the checks and codecs of the models. */
export function refuse<Code extends FaultCode>(
  payload: z.core.ParsePayload,
  path: Path,
  code: Code,
  facts: FaultFacts[Code],
): void {
  payload.issues.push({ code: 'custom', path: [...path], input: payload.value, params: { code, facts } });
}

/** The value if the schema takes it, else the first fault that it finds, in the order of the schema's fields. */
export function checked<S extends z.core.$ZodType>(
  schema: S,
  value: unknown,
): { readonly ok: true; readonly value: z.output<S> } | { readonly ok: false; readonly wrong: FaultAt } {
  const parsed = z.safeParse(schema, value, { reportInput: true });
  if (parsed.success) return { ok: true, value: parsed.data };
  const issue = parsed.error.issues[0] as z.core.$ZodIssue;
  const path = issue.path.map((part) => (typeof part === 'number' ? part : String(part)));
  return { ok: false, wrong: { path, fault: faultOf(issue) } };
}

function faultOf(issue: z.core.$ZodIssue): Fault {
  switch (issue.code) {
    case 'invalid_type':
      return { code: 'type', facts: { expected: issue.expected, received: typeOf(issue.input) } };
    case 'invalid_value':
      return { code: 'value', facts: { allowed: issue.values as Primitive[] } };
    case 'too_big': {
      const { origin, maximum, inclusive } = issue;
      return {
        code: 'too-big',
        facts: { of: origin as Measured, most: Number(maximum), isIncluded: inclusive !== false },
      };
    }
    case 'too_small': {
      const { origin, minimum, inclusive } = issue;
      return {
        code: 'too-small',
        facts: { of: origin as Measured, least: Number(minimum), isIncluded: inclusive !== false },
      };
    }
    case 'invalid_format':
      return issue.pattern !== undefined && issue.format === 'regex'
        ? { code: 'pattern', facts: { pattern: issue.pattern } }
        : { code: 'format', facts: { format: issue.format } };
    case 'unrecognized_keys':
      return { code: 'keys', facts: { keys: issue.keys } };
    case 'invalid_union':
      return 'options' in issue && issue.options
        ? { code: 'kind', facts: { allowed: issue.options as Primitive[] } }
        : OTHER;
    case 'custom':
      return (issue.params as Fault | undefined) ?? OTHER;
    default:
      return OTHER;
  }
}

const OTHER: Fault = { code: 'other', facts: {} };

/** `string`, `array`, `null`; of a number that is none, what it is. */
function typeOf(value: unknown): string {
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : z.util.parsedType(value);
}
