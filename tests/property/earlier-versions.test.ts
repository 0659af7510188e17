/** Projects as each version of the file has them: opened, saved in the present version, and opened again. */
import { describe, expect, it } from 'vitest';
import { projectFromText, projectToText } from '@shared/project/index.ts';
import { generatedFile, VERSIONS } from '../digests/generated/project-file.ts';
import { saidOf } from '../digests/said.ts';

/** Beyond those whose digests every run of the tests asks for. */
const FIRST = 500;

describe.each(VERSIONS)('a project of version %i', (version) => {
  const files = Array.from({ length: 60 }, (_, at) => JSON.stringify(generatedFile(version, FIRST + at)));

  it('is the same project when it was saved and is opened again', () => {
    for (const file of files) {
      const opened = projectFromText(file);
      const saved = projectToText(opened);
      const again = projectFromText(saved);
      expect(again).toEqual(opened);
      expect(projectToText(again)).toBe(saved);
    }
  });

  it('is planned from its file as it is from the one that is saved', () => {
    for (const file of files.slice(0, 12)) {
      const { plans, file: saved } = saidOf(file);
      expect(saidOf(saved).plans).toEqual(plans);
    }
  });
});
