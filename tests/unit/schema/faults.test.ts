/** What a schema finds wrong, as a fact and in words. */
import { describe, expect, it } from 'vitest';
import { checked, refuse, z } from '@shared/schema/index.ts';
import { faultSaid } from '@shared/words/en/faults.ts';

const kinds = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('seam') }),
  z.strictObject({ kind: z.literal('gaps'), stitches: z.int() }),
]);

/** A schema, what it refuses, and where. The library has English sentences of its own, which ours are to be. */
const REFUSED: [string, z.core.$ZodType, unknown, (string | number)[]][] = [
  ['a field of another type', z.strictObject({ name: z.string() }), { name: 5 }, ['name']],
  ['a field that is not there', z.strictObject({ name: z.string() }), {}, ['name']],
  ['null', z.array(z.boolean()), [true, null], [1]],
  ['a list for an object', z.strictObject({}), [], []],
  ['a number without end', z.number(), Infinity, []],
  ['a number that is none', z.number(), Number.NaN, []],
  ['half a stitch', z.int(), 0.5, []],
  ['a number that no longer counts exactly', z.int(), 2 ** 60, []],
  ['another word', z.literal('walewright'), 'other', []],
  ['none of some words', z.enum(['worn', 'needles']), 'sideways', []],
  ['a number that is too large', z.int().check(z.lte(50)), 51, []],
  ['a number that is too small', z.number().check(z.gte(1)), 0.5, []],
  ['a number of 0', z.number().check(z.gt(0)), 0, []],
  ['a text that is too long', z.string().check(z.maxLength(3)), 'abcd', []],
  ['a text that is too short', z.string().check(z.minLength(1)), '', []],
  ['a list that is too long', z.array(z.string()).check(z.maxLength(1)), ['a', 'b'], []],
  ['a list that is too short', z.array(z.string()).check(z.minLength(1)), [], []],
  ['a text of another form', z.string().check(z.regex(/^#[0-9a-f]{6}$/)), 'white', []],
  ['a time of another form', z.iso.datetime({ precision: 3 }), 'today', []],
  ['a field too many', z.strictObject({}), { colour: 'red' }, []],
  ['two fields too many', z.strictObject({}), { colour: 'red', size: 1 }, []],
  ['a thing of no kind', kinds, { kind: 'by-eye' }, ['kind']],
  ['what none of some schemas take', z.union([z.string(), z.boolean()]), 5, []],
  ['what a test of our own does not take', z.string().check(z.refine(() => false)), 'a', []],
];

describe('what a schema finds wrong', () => {
  it.each(REFUSED)('is said as the library says it: %s', (_, schema, value, path) => {
    const read = checked(schema, value);
    const own = z.safeParse(schema, value, { error: z.locales.en().localeError });
    if (read.ok || own.success) throw new Error('is taken');
    expect(faultSaid(read.wrong.fault)).toBe(own.error.issues[0]?.message);
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
