/** Reading a chart out of a photo, and turning a picture into cells. */
import type { ChartDoubt, CountProposal, FoundChart, GridProposal, Stage } from '../../reading/index.ts';
import { capitalised } from '../marked.ts';
import { numbers as n } from './numbers.ts';

const stages: Readonly<Record<Stage, string>> = {
  'find-chart': 'Looking for the chart',
  straighten: 'Straightening the picture',
  'find-grid': 'Counting columns and rows',
  sample: 'Looking into each cell',
  'even-light': 'Evening out the light',
  'sort-colours': 'Sorting by yarn',
  join: 'Looking where the photos meet',
  reduce: 'Reducing to stitches',
  dither: 'Speckling',
};

const chartDoubts: Readonly<Record<ChartDoubt, string>> = {
  'no-lines': 'It has no lines: its outermost filled cells are taken for its border.',
  'lines-go-on': 'The paper is squared to its edge: what is drawn on it is taken for the chart.',
  outlined: 'The paper is squared to its edge: the outline drawn on it is taken for the chart.',
  'empty-strip': 'An empty strip goes across it: perhaps these are two charts.',
  unclear: 'Its outermost lines are hard to tell from what is around them.',
  bent: 'The sheet is bent more than could be followed.',
};

/** Below this confidence a count is said to be a guess. */
const SURE = 0.5;

function counted(proposal: CountProposal, say: (count: number) => string): string {
  return proposal.confidence >= SURE ? say(proposal.count) : `perhaps ${say(proposal.count)}`;
}

export const reading = {
  stage: (stage: Stage): string => stages[stage],

  /** The four corners, in the order in which they are set. */
  corners: ['top left', 'top right', 'bottom right', 'bottom left'] as const,

  /** The chart that was found, and what to check about it. */
  found({ columns, rows, sure, why }: FoundChart): string {
    const counts = `${n.columns(columns)} and ${n.rows(rows)}`;
    if (sure) return `A chart of ${counts} was found.`;
    return `A chart of perhaps ${counts} was found. ${why.map((doubt) => chartDoubts[doubt]).join(' ')} Check its corners.`;
  },

  /** What was counted, and what to do about it. */
  proposal({ columns, rows }: GridProposal): string {
    if (columns === null && rows === null) {
      return 'No evenly spaced cells were found. Check the corners, or count and give the columns and rows.';
    }
    if (columns === null)
      return `${capitalised(counted(rows as CountProposal, n.rows))} were found, but no columns. Count and give them.`;
    if (rows === null)
      return `${capitalised(counted(columns, n.columns))} were found, but no rows. Count and give them.`;
    const isSure = columns.confidence >= SURE && rows.confidence >= SURE;
    const found = `${capitalised(counted(columns, n.columns))} and ${counted(rows, n.rows)}.`;
    return isSure ? found : `${found} Count again where it says perhaps.`;
  },

  /** `12 of 720 cells are doubtful.` Where the corners may be others, no more is said than what lies between them. */
  doubtful: (doubtful: number, cells: number, areCornersSure = true): string =>
    doubtful === 0
      ? areCornersSure
        ? 'No cell is doubtful.'
        : 'No cell between these corners is doubtful.'
      : `${doubtful} of ${n.count(cells, 'cell')} ${doubtful === 1 ? 'is' : 'are'} doubtful: look at ${doubtful === 1 ? 'it' : 'them'}.`,
  doubtfulCell: (column: number, row: number): string => `Doubtful: row ${row}, column ${column}.`,
};
