import { describe, expect, it } from 'vitest';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  afterChange,
  changePiece,
  changeSection,
  changeSectionRows,
  changeSizeSection,
  inSize,
  removeSize,
  sizesOf,
  type Change,
  type ProjectAt,
} from '@shared/project/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { threeSizes, withBand } from './three-sizes.ts';

describe('rows of a section in each size', () => {
  const rib = { name: 'rib', rows: 12, isLined: false, gauge: { stitches: 26, rows: 50 }, tension: '' };
  const ribbed = (): ProjectAt =>
    afterChange(threeSizes(), changePiece(threeSizes(), 'section-rows', { sections: [rib] }));
  const ribs = (project: ProjectAt): (number | undefined)[] =>
    sizesOf(project).map(({ sectionRows }) => sectionRows[0]?.rows);
  const changed = (project: ProjectAt, change: Change): ProjectAt => expectChangeLaws(project, change);

  it('are those of all until one has others, and then each has its own', () => {
    const project = ribbed();
    const higher = changed(project, changeSectionRows(project, 0, 14, null));
    const own = changed(higher, changeSizeSection(higher, 2, 0, 20, null));
    expect([ribs(project), ribs(higher), ribs(own)]).toEqual([
      [12, 12, 12],
      [14, 14, 14],
      [14, 14, 20],
    ]);
    // M is looked at.
    expect(ribs(changed(own, changeSectionRows(own, 0, 16, null)))).toEqual([14, 16, 20]);
    expect(ribs(changed(own, changeSizeSection(own, 2, 0, 14, null)))).toEqual([14, 14, 14]);
  });

  it('given as lengths follow the gauge of the section, each size from its own', () => {
    // 20, 24 and 30 mm at 50 rows in 10 cm are 10, 12 and 15 rows; at 40 they are 8, 9.6 and 12.
    const given = [20, 24, 30].reduce(
      (project, mm, index) => changed(project, changeSizeSection(project, index, 0, 1, mm)),
      ribbed(),
    );
    expect(ribs(given)).toEqual([10, 12, 15]);
    const loose = changed(given, changeSection(given, 'section-gauge', 0, { gauge: { stitches: 26, rows: 40 } }));
    expect(ribs(loose)).toEqual([8, 10, 12]);
    expect(() => changeSizeSection(given, 0, 1, 1, null)).toThrow(RangeError);
  });

  it('keep what stands a length from an edge there, each size by its own rows', () => {
    const position = { kind: 'from-edge', edge: 'lower', section: 'piece', rows: 42, lengthMm: 100 } as const;
    const project = withBand(ribbed(), { position });
    const away = (of: ProjectAt): (number | null)[] =>
      of.sizes.map((_, index) => {
        const there = bandsOf(inSize(of, index))[0]?.position;
        return there?.kind === 'from-edge' && there.lengthMm === 100 ? there.rows : null;
      });
    // 12 rows of rib at 50 rows in 10 cm are 24 mm, and the other 76 mm 30.4 rows at 40; 24 rows are 48 mm, the other 52 mm 20.8.
    const higher = changed(project, changeSizeSection(project, 2, 0, 24, null));
    expect([away(project), away(higher)]).toEqual([
      [42, 42, 42],
      [42, 42, 45],
    ]);
    const gauge = { gauge: { stitches: 26, rows: 30 } };
    // At 30 rows 12 are 40 mm, with 24 more rows above them; 24 are 80 mm, with 8.
    expect(away(changed(higher, changeSection(higher, 'section-gauge', 0, gauge)))).toEqual([36, 36, 32]);
    const fromLarge = inSize(higher, 2);
    expect(away(changed(fromLarge, changeSection(fromLarge, 'section-gauge', 0, gauge)))).toEqual([36, 36, 32]);
    // Given in the size that goes, it is kept in those that stay.
    const given = withBand(fromLarge, { position: { ...position, rows: 45 } });
    expect(away(given)).toEqual([42, 42, 45]);
    expect(away(inSize(changed(given, removeSize(given, 2)), 0))).toEqual([42, 42]);
  });
});
