/** What came with version 8, in files of version 7 and in edits kept behind work of it. */
import { describe, expect, it } from 'vitest';
import { START_COLOURWAYS, START_LOOP, START_MENDING, START_YARN_MARGIN } from '@shared/project/index.ts';
import { editsOfVersion8, toVersion8 } from '../../../src-shared/project/version-8.ts';

const band = { id: 'b', kind: 'band' };
/** What came with the version beside colourways. */
const CAME = { colourways: START_COLOURWAYS, yarnMargin: START_YARN_MARGIN };

describe('a project of version 7', () => {
  it('has one colourway, and its patterns are knitted as drawn', () => {
    expect(toVersion8({ pieces: [{ id: 'p', patterns: [band] }] })).toEqual({
      ...CAME,
      pieces: [
        { id: 'p', loop: START_LOOP, patterns: [{ ...band, colourOrder: null, anchors: null, ...START_MENDING }] },
      ],
    });
  });

  it.each([{ pieces: 'none' }, { pieces: [7, { patterns: null, loop: START_LOOP }] }])(
    'that is wrong stays wrong: %j',
    (file) => {
      expect(toVersion8(file)).toEqual({ ...file, ...CAME });
    },
  );
});

describe('edits of version 7', () => {
  it('that bring patterns and pieces bring them with the fields that came, and all others stay as they are', () => {
    const moved = { kind: 'move', list: 'pieces', id: 'p', at: 0 };
    const pattern = { kind: 'insert', list: 'patterns', piece: 'p', at: 0, item: band };
    const piece = { kind: 'insert', list: 'pieces', at: 0, item: { id: 'q', patterns: [band] } };
    expect(editsOfVersion8([moved, pattern, piece])).toEqual([
      moved,
      { ...pattern, item: { ...band, colourOrder: null, anchors: null, ...START_MENDING } },
      {
        ...piece,
        item: {
          id: 'q',
          loop: START_LOOP,
          patterns: [{ ...band, colourOrder: null, anchors: null, ...START_MENDING }],
        },
      },
    ]);
  });
});
