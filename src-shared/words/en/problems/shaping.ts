/** What is wrong with the shape of a piece and its gauge. */
import { numbers as n } from '../numbers.ts';
import type { ProblemWords } from './problem-words.ts';

const shortened = (line: string): string => (line.length > 60 ? `${line.slice(0, 60)}…` : line);

export const shaping = {
  'shaping-impossible': ({ changes, rows }) => ({
    what: `${n.count(changes, 'change')} at an edge ${changes === 1 ? 'does' : 'do'} not fit in the ${n.rows(rows)} that can be shaped.`,
    mend: 'Shape over more rows, or by fewer stitches. Row 1, the last row, and a folded hem with the row above it stay as they are; to shape those too, shape row by row.',
  }),
  'shaping-outside-piece': ({ row, rows }) => ({
    what: `The shaping goes up to row ${row}, but the piece ends at row ${rows}.`,
    mend: 'Shape on lower rows, or make the piece longer.',
  }),
  'shaping-leaves-nothing': ({ row, taken, before }) => ({
    what: `Row ${row} takes away ${n.stitches(taken)} of ${before}, so nothing is left to knit on.`,
    mend: 'Take away fewer stitches there, or end the piece below that row.',
  }),
  'shaping-too-wide': ({ row, needles, most }) => ({
    what: `With the shaping of row ${row} the piece takes ${n.needles(needles)}; ${most} are the most.`,
    mend: 'Add fewer stitches.',
  }),
  'gauge-absurd': ({ of, count, mm, inTenCm, least, most }) => ({
    what: `${of === 'rows' ? n.rows(count) : n.stitches(count)} on ${n.plain(mm)} mm would be ${n.plain(inTenCm, 2)} in 10 cm; fabric has ${least} to ${most}.`,
    mend: 'Count and measure again; the measure is in mm.',
  }),
  'steps-line-divides': ({ line }) => ({
    what: `"${shortened(line)}" would divide the piece, and a piece is shaped at its two edges alone.`,
    mend: 'End the piece at that row. Take one side off on waste yarn, and plan each side as a piece of its own, with its own row counter.',
  }),
  'steps-line-unclear': ({ line }) => ({
    what: `"${shortened(line)}" is no shaping of a row.`,
    mend: 'Write it like "row 12: +1 at each edge" or "row 40: -4 at the left".',
  }),
  'steps-row-is-cast-on': ({ row }) => ({
    what: `Row ${row} cannot be shaped: row 1 is the cast-on.`,
    mend: 'Shape from row 2 on.',
  }),
  'steps-row-twice': ({ row }) => ({
    what: `Row ${row} stands on more than one line.`,
    mend: `Write all of row ${row} on one line, such as "row ${row}: -2 at the left, -1 at the right".`,
  }),
  'steps-edge-twice': ({ row, side }) => ({
    what: `Row ${row} shapes the ${side} edge twice.`,
    mend: 'Write each edge once.',
  }),
} satisfies Partial<ProblemWords>;
