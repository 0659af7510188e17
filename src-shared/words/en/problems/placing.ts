/** What keeps patterns and sections from standing where they are asked to. */
import { numbers as n } from '../numbers.ts';
import { sections } from '../sections.ts';
import type { ProblemWords } from './problem-words.ts';

export const placing = {
  'needle-unknown': ({ text }) => ({
    what: /^[LR]?0+$/i.test(text)
      ? `"${text}" names no needle: needles are numbered from the centre outwards, and there is no needle 0.`
      : `"${text}" names no needle.`,
    mend: 'Write L or R and a number from 1 on, such as L48 or R12.',
  }),
  'needle-not-on-piece': ({ needle, first, last }) => ({
    what: `A group at ${needle} would leave the piece, which stands on ${first}–${last}.`,
    mend: 'Choose left-hand needles that keep every group on the piece.',
  }),
  'groups-wider-than-piece': ({ needed, available, stitches }) => ({
    what:
      available === stitches
        ? `The groups take ${n.stitches(needed)} and the piece has ${stitches}.`
        : `The groups take ${n.stitches(needed)}, but only ${available} of the piece's ${stitches} are there for them.`,
    mend: 'Use fewer copies, fewer groups, or a wider piece.',
  }),
  'groups-overlap': ({ left, right, stitches }) => ({
    what: `Groups ${left} and ${right} overlap by ${n.stitches(stitches)}.`,
    mend: 'Move one of them outwards.',
  }),
  'groups-out-of-order': ({ left, right }) => ({
    what: `Group ${right} lies to the left of group ${left}.`,
    mend: 'Give the left-hand needles from left to right.',
  }),
  'rule-cannot-be-met': ({ rule, given, least, needed, available }) => ({
    what: ruleNotMet(rule, given, least, needed, available),
    mend:
      given < least
        ? `Give ${least} or more, or choose another rule.`
        : rule === 'margins'
          ? 'Give other margins, or choose another rule.'
          : 'Give a smaller gap, use fewer copies, or choose another rule.',
  }),
  'by-hand-count': ({ given, groups }) => ({
    what: `${n.count(given, 'left-hand needle')} for ${n.count(groups, 'group')}.`,
    mend: 'Give one left-hand needle for each group, left to right.',
  }),
  'no-figure': ({ motif }) => ({
    what: `"${motif}" has no figure: every cell is ground, so there is nothing to place.`,
    mend: 'Draw the figure, or choose another colour as the ground.',
  }),
  'motif-taller-than-section': ({ rows, section, available }) => ({
    what: `The motif is ${n.rows(rows)} tall and ${sections.the(section)} has ${available}.`,
    mend: 'Give a first row, a taller section, or fewer copies upwards.',
  }),
  'motif-leaves-section': ({ rows, section, plain, left, edge }) => ({
    what: `With ${n.rows(plain)} ${edge === 'lower' ? 'below' : 'above'} it the motif of ${n.rows(rows)} leaves ${sections.the(section)}, which has ${left} besides.`,
    mend: 'Ask for fewer rows beside it, or make the section taller.',
  }),
  'all-over-taller-than-section': ({ rows, section, available }) => ({
    what: `The all-over is ${n.rows(rows)} tall and ${sections.the(section)} has ${available}.`,
    mend: 'Give it fewer rows, another place, or a taller section.',
  }),
  'all-over-leaves-section': ({ section, plain, left, edge }) => ({
    what: `${n.rows(plain)} are to stay plain ${edge === 'lower' ? 'below' : 'above'} the all-over, and ${sections.the(section)} can spare ${left}.`,
    mend: 'Ask for fewer plain rows, or make the section taller.',
  }),
  'section-missing': ({ section }) => ({
    what: `${sections.atStart(section)} is where a motif stands, and the piece has no such rows.`,
    mend: 'Choose another section for the motif, or give the piece this one.',
  }),
  'rows-outside-piece': ({ first, last, rows }) => ({
    what: `The pattern would run from row ${first} to row ${last}, but the piece has ${n.rows(rows)}.`,
    mend: 'Start it on a lower row, or make the piece longer.',
  }),
  'bands-overlap': ({ one, other, first, last }) => ({
    what: `Pattern bands ${one} and ${other} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'Move one of them up, down or aside.',
  }),
  'fill-overlaps-band': ({ allOver, band, first, last }) => ({
    what: `All-over ${allOver} and pattern band ${band} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'End the all-over below the pattern band, begin it above, or keep stitches plain beside it.',
  }),
  'fills-overlap': ({ one, other, first, last }) => ({
    what: `All-overs ${one} and ${other} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'End one of them below the other, or keep stitches of one plain.',
  }),
  'fill-without-room': ({ allOver }) => ({
    what: `The plain edges of all-over ${allOver} leave no stitch for its pattern.`,
    mend: 'Keep fewer stitches plain.',
  }),
  'fill-rows-turned': ({ allOver, first, last }) => ({
    what: `All-over ${allOver} would begin on row ${first} and end on row ${last}.`,
    mend: 'Start it lower, end it higher, or make the piece longer.',
  }),
  'hem-longer-than-piece': ({ hem, rows }) => ({
    what: `The hem takes ${n.rows(hem)} and the whole piece has ${rows}.`,
    mend: 'Make the hem shorter or the piece longer.',
  }),
  'sections-longer-than-piece': ({ hem, parts, rows }) => ({
    what: `${sections.inAll(hem, parts)}, and the whole piece has ${rows}.`,
    mend: 'Make a section shorter or the piece longer.',
  }),
} satisfies Partial<ProblemWords>;

function ruleNotMet(rule: 'margins' | 'gaps', given: number, least: number, needed: number, available: number): string {
  const spaces = `${rule} of ${given}`;
  if (given < least) {
    const harm = rule === 'margins' ? 'would leave the piece' : 'would overlap those of the next group';
    return `With ${spaces} the blank columns at the edge of a group ${harm}.`;
  }
  return needed > available
    ? `With ${spaces} the groups need ${n.stitches(needed)} and have ${available}.`
    : `With ${spaces} one group leaves ${n.stitches(available - needed)} over, and there is no gap to take them.`;
}
