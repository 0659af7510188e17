/** Bodies of so many bands that they take long. */
import { projectAt, sampleProject, START_PIECE, startBand, type ProjectAt } from '@shared/project/index.ts';

/** Rows from one band to the next. */
const APART = 27;

/** The sample's lighthouses and gulls, two groups a band, from the cast-on to the top of 120 stitches. */
export function longBody(bands: number): ProjectAt {
  return bodyOf(bands, 120, 20 + bands * APART, [3, 2]);
}

/** The same on the needles of a whole bed, three groups a band, 1,000 rows high. */
export function fullBody(bands: number): ProjectAt {
  return bodyOf(bands, 200, 1000, [3, 2, 3]);
}

function bodyOf(bands: number, stitches: number, rows: number, copies: readonly number[]): ProjectAt {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  return {
    ...sample,
    name: 'Long body',
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches, rows } },
    patterns: Array.from({ length: bands }, (_, band) => ({
      ...startBand(motif.id, copies),
      position: { kind: 'from-row', row: 10 + band * APART },
    })),
  };
}
