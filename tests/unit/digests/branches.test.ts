import { describe, expect, it } from 'vitest';
import { FILE_VERSION, projectFileSchema } from '@shared/project/index.ts';
import { z } from '@shared/schema/index.ts';
import { branchesOf, countBranches } from '../../digests/branches.ts';
import { schemaOf, type Schema } from '../../digests/schemas.ts';

const SCHEMA = z.toJSONSchema(
  z.strictObject({
    side: z.enum(['left', 'right']),
    isLined: z.boolean(),
    note: z.optional(z.string()),
    mm: z.nullable(z.number().check(z.gte(0))),
    bits: z.array(
      z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('a') }),
        z.strictObject({ kind: z.literal('b'), n: z.int() }),
      ]),
    ),
    few: z.array(z.int()).check(z.minLength(1)),
  }),
) as Schema;

describe('branches of a schema', () => {
  it('are its variants, its words, yes and no, there and not there, empty and filled', () => {
    expect([...branchesOf(SCHEMA).keys()].sort()).toEqual([
      '.bits empty',
      '.bits filled',
      '.bits[]<a>',
      '.bits[]<b>',
      '.isLined = false',
      '.isLined = true',
      '.mm<null>',
      '.mm<number>',
      '.note not there',
      '.note there',
      '.side = left',
      '.side = right',
    ]);
  });

  it('are counted as values take them', () => {
    const counts = branchesOf(SCHEMA);
    const value = {
      side: 'left',
      isLined: true,
      mm: null,
      bits: [
        { kind: 'b', n: 1 },
        { kind: 'b', n: 2 },
      ],
      few: [1],
    };
    countBranches(SCHEMA, value, counts);
    expect(Object.fromEntries([...counts].filter(([, count]) => count > 0))).toEqual({
      '.bits filled': 1,
      '.bits[]<b>': 2,
      '.isLined = true': 1,
      '.mm<null>': 1,
      '.note not there': 1,
      '.side = left': 1,
    });
    expect(() => countBranches(SCHEMA, { ...value, bits: [{ kind: 'c' }] }, counts)).toThrow('.bits[]');
  });
});

describe('what a file of the present version may hold', () => {
  it('is what was kept of it', () => {
    expect(FILE_VERSION).toBe(8);
    expect(z.toJSONSchema(projectFileSchema, { io: 'input' })).toEqual(schemaOf(8));
  });
});
