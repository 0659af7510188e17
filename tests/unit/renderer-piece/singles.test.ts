/** Single motifs all round, as one entry of a form. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { bandsOf, type Group } from '@shared/pattern/index.ts';
import { afterChange, changeOf, projectAt, setPattern, startBand, startGroup } from '@shared/project/index.ts';
import { withAcross } from '../../../src-renderer/piece/panel/copies.ts';
import { asSingles, singlesOf, withMotifInAll } from '../../../src-renderer/piece/groups/singles.ts';
import { projectOf } from './projects.ts';

const single = startGroup('a', 1);

describe('groups of one copy each', () => {
  it.each<[string, readonly Group[], number | null]>([
    ['are so many single motifs', [single, single, single], 3],
    ['are one where there is one', [single], 1],
    ['are none where one has two copies', [single, startGroup('a', 2)], null],
    ['are none where their motifs differ', [single, startGroup('b', 1)], null],
    ['are none where one is mirrored', [single, { ...single, isMirrored: true }], null],
    ['are none where one is taller', [single, { ...single, up: 2 }], null],
    ['are none where one stands higher', [single, { ...single, rise: 4 }], null],
    ['are none where one has a ball of its own', [single, { ...single, hasOwnBall: true }], null],
  ])('%s', (_, groups, singles) => {
    expect(singlesOf(groups)).toBe(singles);
  });
});

describe('so many single motifs', () => {
  it('are each as the first group was, in all sizes', () => {
    const first = { ...startGroup('a', 3), up: 2, acrossInSizes: { all: 3, but: [{ size: 's', value: 2 }] } };
    const { groups } = asSingles({ groups: [first, startGroup('b', 1)], rule: { kind: 'even' } }, 6);
    expect(groups).toEqual(Array.from({ length: 6 }, () => ({ ...startGroup('a', 1), up: 2 })));
    expect(singlesOf(groups)).toBe(6);
  });

  it('keep their rule, and have one again that stood by hand', () => {
    const groups = [single];
    expect(asSingles({ groups, rule: { kind: 'gaps', stitches: 5 } }, 2).rule).toEqual({ kind: 'gaps', stitches: 5 });
    const byHand = { kind: 'by-hand', first: [-5 as Slot] } as const;
    expect(asSingles({ groups, rule: byHand }, 2).rule).toEqual({ kind: 'seam' });
  });

  it('are one change of the project', () => {
    const project = projectOf(['###'], [2], { piece: { shape: { kind: 'rectangle', stitches: 60, rows: 20 } } });
    const [band] = bandsOf(project);
    if (!band) throw new Error('The project has a band');
    const six = afterChange(project, changeOf('copies', setPattern(project, 'band', 0, asSingles(band, 6))));
    expect(bandsOf(projectAt(six.whole))[0]?.groups.map(({ across }) => across)).toEqual([1, 1, 1, 1, 1, 1]);
  });
});

describe('one group among others', () => {
  it('gets more copies, and all get another motif', () => {
    const { groups } = startBand('a', [1, 2]);
    expect(withAcross(groups, 1, 3)).toEqual([startGroup('a', 1), startGroup('a', 3)]);
    expect(withMotifInAll(groups, 'b')).toEqual([startGroup('b', 1), startGroup('b', 2)]);
  });
});
