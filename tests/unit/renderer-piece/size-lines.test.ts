/** The lines of the table of sizes: what a person may give there is what the forms take. */
import { describe, expect, it } from 'vitest';
import type { Shape } from '@shared/piece/index.ts';
import { boundsOf, type NumberFieldName } from '@shared/project/index.ts';
import { copyLines, numberLines, type GivenLine } from '../../../src-renderer/piece/sizes/lines.ts';
import { projectOf } from './projects.ts';

const SHAPES: readonly Shape[] = [
  { kind: 'rectangle', stitches: 20, rows: 40 },
  { kind: 'tapered', stitches: 20, rows: 40, stitchesAtTop: 10, straightRows: 1 },
  {
    kind: 'body',
    stitches: 20,
    rows: 40,
    stitchesAtWaist: 16,
    stitchesAtChest: 20,
    rowsToWaist: 10,
    rowsToChest: 10,
  },
];

/** The field of the one table that each line is. */
const FIELDS: { readonly [Key in string]: NumberFieldName } = {
  stitches: 'stitches',
  castOn: 'stitches',
  atTop: 'stitches',
  atWaist: 'stitches',
  atChest: 'stitches',
  rows: 'rows',
  rowsInAll: 'rows',
  rowsToWaist: 'shapedRows',
  rowsToChest: 'shapedRows',
  hem: 'hemRows',
  'section 0': 'sectionRows',
  'group 0': 'copiesAcross',
  'group 1': 'copiesAcross',
};

const boundsIn = ({ cells }: GivenLine) => cells.map((cell) => cell && { least: cell.least, most: cell.most });

describe('a line of the table of sizes', () => {
  it('takes what the forms take of the same number', () => {
    const seen = new Set<string>();
    for (const shape of SHAPES) {
      const section = { name: 'rib', rows: 4, gauge: null, tension: '', isLined: false };
      const project = projectOf(['#'], [1, 1], { piece: { shape, hemRows: 4, sections: [section] } });
      for (const line of [...numberLines(project), ...copyLines(project, 0)]) {
        seen.add(line.key);
        // Even shaping ends with a row at least that stays as wide as the one below it.
        const bounds = line.key === 'straightRows' ? { ...boundsOf('shapedRows'), least: 1 } : null;
        expect(boundsIn(line), line.key).toEqual([bounds ?? boundsOf(FIELDS[line.key] as NumberFieldName)]);
      }
    }
    expect([...seen].sort()).toEqual([...Object.keys(FIELDS), 'straightRows'].sort());
  });
});
