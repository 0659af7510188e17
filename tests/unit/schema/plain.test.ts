/** The way back from values in memory to what a file holds. */
import { describe, expect, it } from 'vitest';
import { label, type Slot } from '@shared/bed/index.ts';
import {
  projectFileSchema,
  projectFromText,
  projectToText,
  sampleProject,
  type Project,
} from '@shared/project/index.ts';
import { plainOf, z } from '@shared/schema/index.ts';
import { fixtureNames, fixtureText } from '../../digests/fixtures.ts';

const slotLike = z.codec(z.string(), z.custom<Slot>(), { decode: () => 0 as Slot, encode: label });
const schema = z.strictObject({
  kind: z.literal('groups'),
  first: z.nullable(z.array(slotLike)),
  note: z.optional(z.string()),
  rule: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('seam') }),
    z.strictObject({ kind: z.literal('by-hand'), first: z.array(slotLike) }),
  ]),
  section: z.union([z.enum(['piece', 'body']), z.strictObject({ part: z.string() })]),
});

const written = (value: unknown): string => JSON.stringify(plainOf(schema, value as z.output<typeof schema>));

describe('the plain data of a value', () => {
  it('has codecs undone and keys in the order of the schema, however deep', () => {
    const rule = { first: [11, -1], kind: 'by-hand' };
    expect(written({ section: { part: 'rib' }, rule, first: [-48], kind: 'groups' })).toBe(
      '{"kind":"groups","first":["L48"],"rule":{"kind":"by-hand","first":["R12","L1"]},"section":{"part":"rib"}}',
    );
  });

  it('leaves out what is not there and what the schema does not know', () => {
    const value = { kind: 'groups', first: null, note: undefined, rule: { kind: 'seam', more: 1 }, section: 'body' };
    expect(written({ ...value, also: 'this' })).toBe(
      '{"kind":"groups","first":null,"rule":{"kind":"seam"},"section":"body"}',
    );
  });

  it('is what the library encodes, wherever the library does not refuse', () => {
    for (const name of fixtureNames()) {
      const project = projectFromText(fixtureText(name));
      const encoded: unknown = z.encode(projectFileSchema, project as z.output<typeof projectFileSchema>);
      expect(JSON.stringify(plainOf(projectFileSchema, project))).toBe(JSON.stringify(encoded));
    }
  });

  it('is there for work that could not be opened again: it is kept whatever it is', () => {
    const project: Project = { ...sampleProject(), name: '' };
    expect(JSON.parse(projectToText(project))).toMatchObject({ name: '', version: 8 });
    expect(() => projectFromText(projectToText(project))).toThrow('project-invalid');
  });
});
