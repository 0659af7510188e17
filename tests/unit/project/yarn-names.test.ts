import { describe, expect, it } from 'vitest';
import { freeYarnName } from '@shared/project/index.ts';

const name = (index: number): string => `yarn ${index + 1}`;

describe('the name of a yarn that comes', () => {
  it.each([
    { taken: [], from: 0, called: 'yarn 1' },
    { taken: ['slate', 'chalk'], from: 2, called: 'yarn 3' },
    { taken: ['yarn 1', 'yarn 3'], from: 2, called: 'yarn 4' },
    { taken: ['Yarn 3', ' yarn 4 '], from: 2, called: 'yarn 5' },
  ])('is $called beside $taken', ({ taken, from, called }) => {
    expect(freeYarnName(taken, from, name)).toBe(called);
  });
});
