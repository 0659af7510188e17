/** A body of so many bands that its sheet takes many pages. */
import { sampleProject, START_PIECE, startBand, type Project } from '@shared/project/index.ts';

/** Rows from one band to the next. */
const APART = 27;

/** The sample's lighthouses and gulls, two groups a band, from the cast-on to the top. */
export function longBody(bands: number): Project {
  const sample = sampleProject();
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  return {
    ...sample,
    name: 'Long body',
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 120, rows: 20 + bands * APART } },
    bands: Array.from({ length: bands }, (_, band) => ({
      ...startBand(motif.id, [3, 2]),
      position: { kind: 'from-row', row: 10 + band * APART },
    })),
  };
}
