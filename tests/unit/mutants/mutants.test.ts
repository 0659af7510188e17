import { describe, expect, it } from 'vitest';
import { mutated, placeOf, type Sources } from '../../mutants/find.ts';
import { MUTANTS, nameOf } from '../../mutants/mutants.ts';
import { readRecord } from '../../mutants/record.ts';
import { coreSources } from '../../mutants/tree.ts';

describe('the mutants', () => {
  const sources = coreSources();

  it.each(MUTANTS.map((mutant) => [nameOf(mutant), mutant] as const))('%s has its place', (_, mutant) => {
    expect(mutated(mutant, placeOf(mutant, sources), sources)).toContain(mutant.becomes);
  });

  it('are 40 or more, and what became of each is recorded', () => {
    expect(MUTANTS.length).toBeGreaterThanOrEqual(40);
    expect([...readRecord().keys()]).toEqual(MUTANTS.map(nameOf));
  });
});

describe('the place of a mutant', () => {
  const mutant = { in: 'half', text: 'count / 2', becomes: 'count / 3' };
  const half = 'export function half(count: number): number {\n  return Math.floor(\n    count /\n      2,\n  );\n}\n';
  const other = 'export const third = (count: number) => count / 2;\n';
  const sourcesOf = (files: Readonly<Record<string, string>>): Sources => new Map(Object.entries(files));

  it('is in the function that it names, whatever file that is in and however it is laid out', () => {
    const sources = sourcesOf({ 'a.ts': `${other}// half\n`, 'b.ts': other + half });
    const place = placeOf(mutant, sources);
    expect(place.file).toBe('b.ts');
    expect(mutated(mutant, place, sources)).toBe(other + half.replace(/count \/\s+2/, 'count / 3'));
  });

  it('is in a method, an arrow or a constant as well', () => {
    for (const source of [
      'class A {\n  half(count: number) {\n    return count / 2;\n  }\n}\n',
      'const half = (count: number) => count / 2;\n',
      'const half = { of: (count: number) => count / 2 };\n',
    ]) {
      expect(placeOf(mutant, sourcesOf({ 'a.ts': source })).start).toBe(source.indexOf('count / 2'));
    }
  });

  it('must be there, and be one', () => {
    expect(() => placeOf(mutant, sourcesOf({ 'a.ts': other }))).toThrow(
      'In "half" the text "count / 2" stands nowhere',
    );
    expect(() => placeOf(mutant, sourcesOf({ 'a.ts': half, 'b.ts': half }))).toThrow('stands 2 times (a.ts, b.ts)');
  });
});
