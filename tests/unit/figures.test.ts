import { describe, expect, it } from 'vitest';
import { figuresOf } from '../architecture/figures.ts';
import type { Tree } from '../architecture/imports.ts';
import { linesOfCode } from '../architecture/lines.ts';

describe('figures of the sources', () => {
  it('count lines that hold code', () => {
    const script = '/** What it is.\n * And more. */\nconst a = `one\ntwo`; // beside\n\n  // alone\nexport { a };\n';
    expect(linesOfCode('a.ts', script)).toBe(3);
    const component = `<script lang="ts">\n${script}</script>\n\n<!-- said\nhere -->\n<p>{a}</p>\n<style>\n  /* blue */\n</style>\n`;
    expect(linesOfCode('A.svelte', component)).toBe(2 + 3 + 3);
  });

  it('count files, small ones and those that one file imports', () => {
    const files: Readonly<Record<string, string>> = {
      'src-shared/bed/a.ts': "import './b.ts';\nimport './c.ts';",
      'src-shared/bed/b.ts': `import './c.ts';\n${'export {};\n'.repeat(30)}`,
      'src-shared/bed/c.ts': 'export {};',
    };
    const tree: Tree = { files: Object.keys(files), read: (file) => files[file] as string };
    const { folders, all, longest } = figuresOf(tree);
    expect(all).toEqual({
      lines: 34,
      files: 3,
      small: 2,
      oneImporter: 1,
      longest: { file: 'src-shared/bed/b.ts', lines: 31 },
    });
    expect(folders).toEqual({ 'src-shared/bed': all });
    expect(longest.map(({ lines }) => lines)).toEqual([31, 2, 1]);
  });
});
