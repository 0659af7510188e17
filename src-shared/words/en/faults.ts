/** What is wrong with one field of a file or a request, to stand in brackets behind its name. */
import type { Fault, FaultCode, FaultFacts } from '../../schema/index.ts';

type Allowed = FaultFacts['value']['allowed'];

/** `"worn"`, `3`. */
const quoted = (value: Allowed[number]): string => (typeof value === 'string' ? `"${value}"` : String(value));

/** What texts and lists have so and so many of; numbers are large themselves. */
const COUNTED: { readonly [Of in FaultFacts['too-big']['of']]: string | null } = {
  string: 'characters',
  array: 'items',
  number: null,
  int: null,
};

function bound(of: keyof typeof COUNTED, sign: string, limit: number): string {
  const items = COUNTED[of];
  return items === null ? `expected ${of} to be ${sign}${limit}` : `expected ${of} to have ${sign}${limit} ${items}`;
}

const FORMATS: Readonly<Record<string, string>> = { datetime: 'ISO datetime' };

const byCode: { readonly [Code in FaultCode]: (facts: FaultFacts[Code]) => string } = {
  type: ({ expected, received }) => `Invalid input: expected ${expected}, received ${received}`,
  value: ({ allowed: [only, ...others] }) =>
    others.length === 0
      ? `Invalid input: expected ${quoted(only as Allowed[number])}`
      : `Invalid option: expected one of ${[only as Allowed[number], ...others].map(quoted).join('|')}`,
  kind: ({ allowed }) => `Invalid discriminator value. Expected ${allowed.map((one) => `'${one}'`).join(' | ')}`,
  'too-big': ({ of, most, isIncluded }) => `Too big: ${bound(of, isIncluded ? '<=' : '<', most)}`,
  'too-small': ({ of, least, isIncluded }) => `Too small: ${bound(of, isIncluded ? '>=' : '>', least)}`,
  pattern: ({ pattern }) => `Invalid string: must match pattern ${pattern}`,
  format: ({ format }) => `Invalid ${FORMATS[format] ?? format}`,
  keys: ({ keys }) => `Unrecognized key${keys.length > 1 ? 's' : ''}: ${keys.map(quoted).join(', ')}`,
  other: () => 'Invalid input',

  twice: ({ name }) => `"${name}" stands twice`,
  'too-many': ({ most }) => `are more than ${most}`,
  'line-uneven': ({ cells, first }) => `has ${cells} cells, the first has ${first}`,
  'yarn-missing': () => 'names no yarn of the palette',
  'letter-without-yarn': ({ letter }) => `"${letter}" names no yarn of the palette`,
  'ground-differs': () => 'differs from the first motif',
  'underlays-too-large': () => 'hold more pictures to trace than a file takes',
  'motif-missing': ({ motif }) => `no motif is called "${motif}"`,
  'row-not-above': () => 'must be above the row before it',
  'below-first-row': () => 'must not be below the first row',
};

export function faultSaid({ code, facts }: Fault): string {
  return (byCode[code] as (facts: Fault['facts']) => string)(facts);
}
