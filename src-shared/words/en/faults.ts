/** What is wrong with one field of a file or a request, to stand in brackets behind its name. */
import { numbers as n } from './numbers.ts';
import type { Fault, FaultCode, FaultFacts } from '../../schema/index.ts';

type Allowed = FaultFacts['value']['allowed'];

/** `"worn"`, `3`. */
const quoted = (value: Allowed[number]): string => (typeof value === 'string' ? `"${value}"` : String(value));

/** What texts and lists have so and so many of; numbers are large themselves. */
const COUNTED: { readonly [Of in FaultFacts['too-big']['of']]: string | null } = {
  string: 'character',
  array: 'item',
  number: null,
  int: null,
};

/** `must have at most 80 characters`, `must be more than 0`. */
function bound(of: keyof typeof COUNTED, than: string, limit: number): string {
  const items = COUNTED[of];
  return items === null ? `must be ${than} ${limit}` : `must have ${than} ${n.count(limit, items)}`;
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
};

const typed = (type: string): string => TYPES[type] ?? type;

const FORMATS: Readonly<Record<string, string>> = { datetime: 'a date with its time, as ISO 8601 writes it' };

const byCode: { readonly [Code in FaultCode]: (facts: FaultFacts[Code]) => string } = {
  type: ({ expected, received }) =>
    received === 'undefined'
      ? 'is missing'
      : `must be ${typed(expected)}${expected === 'int' && received === 'number' ? '' : `, not ${typed(received)}`}`,
  value: ({ allowed: [only, ...others] }) =>
    others.length === 0
      ? `must be ${quoted(only as Allowed[number])}`
      : `must be one of ${[only as Allowed[number], ...others].map(quoted).join(', ')}`,
  kind: ({ allowed }) => `its kind must be one of ${allowed.map(quoted).join(', ')}`,
  'too-big': ({ of, most, isIncluded }) => bound(of, isIncluded ? 'at most' : 'less than', most),
  'too-small': ({ of, least, isIncluded }) => bound(of, isIncluded ? 'at least' : 'more than', least),
  pattern: ({ pattern }) => `must match ${pattern}`,
  format: ({ format }) => `must be ${FORMATS[format] ?? format}`,
  keys: ({ keys }) => `has what nothing is known of: ${keys.map(quoted).join(', ')}`,
  other: () => 'cannot be read',

  twice: ({ name }) => `"${name}" stands twice`,
  'too-many': ({ most }) => `are more than ${most}`,
  'line-uneven': ({ cells, first }) => `has ${cells} cells, the first has ${first}`,
  'yarn-missing': () => 'names no yarn of the palette',
  'not-one-knitted': ({ knitted }) =>
    `one must have no yarns of its own, being the one that is knitted, not ${knitted}`,
  'not-each-yarn': () => 'must be one for each yarn of the palette',
  'yarn-twice': () => 'is the drawn yarn of another line of the stripe',
  'main-in-stripe': () => 'is the main yarn, which no stripe changes: draw rows all in a contrast instead',
  'letter-without-yarn': ({ letter }) => `"${letter}" names no yarn of the palette`,
  'underlays-too-large': () => 'hold more pictures to trace than a file takes',
  'motif-missing': ({ motif }) => `no motif is called "${motif}"`,
  'size-missing': ({ size }) => `no size has the id "${size}"`,
  'size-out-of-order': () => 'must stand in the order of the sizes',
  'as-in-all-sizes': () => 'says again what all sizes have',
  'not-each-size': () => 'must be one for each size, in their order',
  'not-each-section': () => 'must be one for each section',
  'row-not-above': () => 'must be above the row before it',
  'below-first-row': () => 'must not be below the first row',
};

export function faultSaid({ code, facts }: Fault): string {
  return (byCode[code] as (facts: Fault['facts']) => string)(facts);
}
