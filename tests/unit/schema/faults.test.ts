/** What a schema finds wrong, as a fact and in words. */
import { describe, expect, it } from 'vitest';
import { checked, refuse, z } from '@shared/schema/index.ts';
import { faultSaid } from '@shared/words/en/faults.ts';

const kinds = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('seam') }),
  z.strictObject({ kind: z.literal('gaps'), stitches: z.int() }),
]);

/** A schema, what it refuses, where, and what is said of it: in words that a person knows, not in those of a library. */
const REFUSED: [string, z.core.$ZodType, unknown, (string | number)[], string][] = [
  [
    'a field of another type',
    z.strictObject({ name: z.string() }),
    { name: 5 },
    ['name'],
    'must be a text, not a number',
  ],
  ['a field that is not there', z.strictObject({ name: z.string() }), {}, ['name'], 'is missing'],
  ['null', z.array(z.boolean()), [true, null], [1], 'must be true or false, not null'],
  ['a list for an object', z.strictObject({}), [], [], 'must be an object, not a list'],
  ['a number without end', z.number(), Infinity, [], 'must be a number, not Infinity'],
  ['a number that is none', z.number(), Number.NaN, [], 'must be a number, not NaN'],
  ['half a stitch', z.int(), 0.5, [], 'must be a whole number'],
  ['a number that no longer counts exactly', z.int(), 2 ** 60, [], 'must be at most 9007199254740991'],
  ['another word', z.literal('walewright'), 'other', [], 'must be "walewright"'],
  ['none of some words', z.enum(['worn', 'needles']), 'sideways', [], 'must be one of "worn", "needles"'],
  ['a number that is too large', z.int().check(z.lte(50)), 51, [], 'must be at most 50'],
  ['a number that is too small', z.number().check(z.gte(1)), 0.5, [], 'must be at least 1'],
  ['a number of 0', z.number().check(z.gt(0)), 0, [], 'must be more than 0'],
  ['a text that is too long', z.string().check(z.maxLength(3)), 'abcd', [], 'must have at most 3 characters'],
  ['a text that is too short', z.string().check(z.minLength(1)), '', [], 'must have at least 1 character'],
  ['a list that is too long', z.array(z.string()).check(z.maxLength(1)), ['a', 'b'], [], 'must have at most 1 item'],
  ['a list that is too short', z.array(z.string()).check(z.minLength(1)), [], [], 'must have at least 1 item'],
  ['a text of another form', z.string().check(z.regex(/^#[0-9a-f]{6}$/)), 'white', [], 'must match /^#[0-9a-f]{6}$/'],
  [
    'a time of another form',
    z.iso.datetime({ precision: 3 }),
    'today',
    [],
    'must be a date with its time, as ISO 8601 writes it',
  ],
  ['a field too many', z.strictObject({}), { colour: 'red' }, [], 'has what nothing is known of: "colour"'],
  [
    'two fields too many',
    z.strictObject({}),
    { colour: 'red', size: 1 },
    [],
    'has what nothing is known of: "colour", "size"',
  ],
  ['a thing of no kind', kinds, { kind: 'by-eye' }, ['kind'], 'its kind must be one of "seam", "gaps"'],
  ['what none of some schemas take', z.union([z.string(), z.boolean()]), 5, [], 'cannot be read'],
  ['what a test of our own does not take', z.string().check(z.refine(() => false)), 'a', [], 'cannot be read'],
];

describe('what a schema finds wrong', () => {
  it.each(REFUSED)('is said in plain words: %s', (_, schema, value, path, said) => {
    const read = checked(schema, value);
    if (read.ok) throw new Error('is taken');
    expect(faultSaid(read.wrong.fault)).toBe(said);
    expect(read.wrong.path).toEqual(path);
  });

  it('is the first thing in the order of its fields', () => {
    const schema = z.strictObject({ a: z.string(), b: z.strictObject({ c: z.array(z.int()) }), d: z.string() });
    expect(checked(schema, { d: 5, b: { c: [1, 'x'] }, a: 'x' })).toEqual({
      ok: false,
      wrong: { path: ['b', 'c', 1], fault: { code: 'type', facts: { expected: 'number', received: 'string' } } },
    });
  });

  it('is what a model refuses, at the place that it names', () => {
    const schema = z.strictObject({
      names: z.array(z.string()).check((payload) => refuse(payload, [1], 'twice', { name: 'M' })),
    });
    const read = checked(schema, { names: ['M', 'M'] });
    expect(read).toEqual({ ok: false, wrong: { path: ['names', 1], fault: { code: 'twice', facts: { name: 'M' } } } });
  });

  it('is plain data, which goes over a wire', () => {
    for (const [, schema, value] of REFUSED) {
      const read = checked(schema, value);
      expect(structuredClone(read)).toEqual(read);
      expect(JSON.parse(JSON.stringify(read))).toEqual(read);
    }
  });
});
