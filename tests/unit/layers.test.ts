import { resolve } from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const eslint = new ESLint({ cwd: root });

/** The rules that a line breaks when it stands in a file of a layer. */
async function broken(file: string, line: string): Promise<string[]> {
  const [result] = await eslint.lintText(`${line}\n`, { filePath: resolve(root, file) });
  return (result?.messages ?? []).flatMap((message) => message.ruleId ?? []);
}

describe('the layers are held by lint', () => {
  it.each([
    { file: 'src-shared/bed/x.ts', line: "import { readFile } from 'node:fs';", rule: 'no-restricted-imports' },
    { file: 'src-shared/bed/x.ts', line: "import Konva from 'konva/lib/Core.js';", rule: 'no-restricted-imports' },
    {
      file: 'src-shared/bed/x.ts',
      line: "import { a } from '../../src-main/services/a.ts';",
      rule: 'no-restricted-imports',
    },
    { file: 'src-shared/bed/x.ts', line: 'export const now = Date.now();', rule: 'no-restricted-properties' },
    { file: 'src-shared/bed/x.ts', line: 'export const now = new Date();', rule: 'no-restricted-syntax' },
    { file: 'src-shared/bed/x.ts', line: 'export const luck = Math.random();', rule: 'no-restricted-properties' },
    { file: 'src-shared/bed/x.ts', line: 'export const page = document.body;', rule: 'no-restricted-globals' },
    { file: 'src-shared/bed/x.ts', line: 'export const luck = crypto.randomUUID();', rule: 'no-restricted-globals' },
    { file: 'src-shared/bed/x.ts', line: 'export const luck = globalThis.crypto;', rule: 'no-restricted-globals' },
    {
      file: 'src-renderer/window/x.ts',
      line: "import { a } from '../../src-main/services/a.ts';",
      rule: 'no-restricted-imports',
    },
    { file: 'src-renderer/window/x.ts', line: "import { shell } from 'electron';", rule: 'no-restricted-imports' },
    { file: 'src-renderer/ui/x.ts', line: "export const a = () => import('./a.ts');", rule: 'no-restricted-syntax' },
    {
      file: 'src-renderer/ui/x.ts',
      line: "export const a = new Worker(new URL('./a.ts', import.meta.url));",
      rule: 'no-restricted-syntax',
    },
    {
      file: 'src-main/services/x.ts',
      line: "import { a } from '../../src-renderer/ui/a.ts';",
      rule: 'no-restricted-imports',
    },
    { file: 'src-main/services/x.ts', line: 'export default 1;', rule: 'no-restricted-exports' },
    { file: 'src-shared/bed/x.ts', line: "import { z } from 'zod';", rule: 'no-restricted-imports' },
    { file: 'src-main/services/x.ts', line: "import * as z from 'zod/mini';", rule: 'no-restricted-imports' },
    { file: 'src-renderer/ui/x.ts', line: "import { z } from 'zod/v4';", rule: 'no-restricted-imports' },
    {
      file: 'tests/reference/knitter/x.ts',
      line: "import { label } from '@shared/bed/index.ts';",
      rule: 'no-restricted-imports',
    },
    {
      file: 'tests/reference/knitter/x.ts',
      line: "import { z } from '../../../src-shared/schema/index.ts';",
      rule: 'no-restricted-imports',
    },
    {
      file: 'tests/reference/knitter/x.ts',
      line: "import { knit } from '../../property/projects.ts';",
      rule: 'no-restricted-imports',
    },
    {
      file: 'tests/reference/knitter/examples/x.ts',
      line: "export const plan = () => import('@shared/plan/index.ts');",
      rule: 'no-restricted-syntax',
    },
    {
      file: 'tests/reference/told/x.ts',
      line: "import { words } from '@shared/words/index.ts';",
      rule: 'no-restricted-imports',
    },
    {
      file: 'tests/reference/told/x.ts',
      line: "import { placementSheet } from '../../../src-shared/output/index.ts';",
      rule: 'no-restricted-imports',
    },
  ])('$file may not hold: $line', async ({ file, line, rule }) => {
    expect(await broken(file, line)).toContain(rule);
  });

  it('what a layer may import passes', async () => {
    expect(await broken('src-renderer/window/x.ts', "export { label } from '@shared/bed/index.ts';")).toEqual([]);
    const late = "import { latePart } from './load-part.ts';\nexport const a = latePart(() => import('./a.ts'));";
    expect(await broken('src-renderer/ui/x.ts', late)).toEqual([]);
    const knitter = "import { z } from 'zod';\nexport { z };\nexport { labelOf } from './needles.ts';";
    expect(await broken('tests/reference/knitter/x.ts', knitter)).toEqual([]);
    const told = "export { labelOf } from '../knitter/needles.ts';\nexport { actRead } from './sentences.ts';";
    expect(await broken('tests/reference/told/x.ts', told)).toEqual([]);
    expect(await broken('src-main/services/x.ts', "export { readFile } from 'node:fs/promises';")).toEqual([]);
  });
});
