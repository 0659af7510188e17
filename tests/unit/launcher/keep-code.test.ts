/** What the build runs commands on to keep their code. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { projectFromText, sampleProject } from '@shared/project/index.ts';

it('is a project that is read, with what the sample has', () => {
  const file = join(import.meta.dirname, '../../../src-main/launcher/sample.walewright');
  const { motifs, pieces, yarns } = projectFromText(readFileSync(file, 'utf8'));
  const sample = sampleProject();
  expect([motifs.length, pieces.length, yarns.length]).toEqual([
    sample.motifs.length,
    sample.pieces.length,
    sample.yarns.length,
  ]);
});
