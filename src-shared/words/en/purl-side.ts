/** The purl side of the piece: floats, carries, wraps and yarn ends as they lie. */
import { label, type FinishedFace, type Run } from '../../bed/index.ts';
import type { FloatLengths } from '../../plan/purl-side/index.ts';
import type { Yarn } from '../../project/index.ts';
import { capitalised } from '../marked.ts';
import { numbers as n } from './numbers.ts';

const WORN: { readonly [Face in FinishedFace]: string } = {
  knit: 'worn inside',
  purl: 'worn outside',
};

/** `13`, `11–20`. */
const lengthsOf = (from: number, to: number): string => (from === to ? String(from) : `${from}–${to}`);

export const purlSide = {
  title: (name: string): string => `${capitalised(name)}, purl side`,
  note: (face: FinishedFace): string => `As it faces you at the machine; ${WORN[face]}. Yarn ends are drawn short.`,
  /** Where strands are too thin to be drawn one by one. */
  veiled: 'Zoom in to see each strand.',
  /** The drawing, to assistive technology. */
  label: (name: string, stitches: number, rows: number): string => `${name}, ${n.size(stitches, rows)}, purl side`,
  help: 'Arrow keys move from needle to needle and row to row; Page Up and Page Down move 10 rows; Home and End go to the edges.',

  lengths: {
    title: 'Floats by length',
    none: 'Nothing floats on this piece.',
    stitches: 'Stitches',
    floats: 'Floats',
    /** `chalk: 60 floats, up to 34 stitches`. */
    yarn: (name: string, floats: number, longest: number): string =>
      `${name}: ${n.count(floats, 'float')}, up to ${n.stitches(longest)}`,
    limit: (stitches: number): string => `limit ${stitches}`,
    /** A bar, which goes to the next float of its lengths when it is pressed. */
    bar({ from, to, counts }: FloatLengths['bars'][number], yarns: readonly Yarn[]): string {
      const parts = counts.map(({ yarn, open, covered }) => `${open + covered} of ${yarns[yarn]?.name ?? ''}`);
      const floats = parts.length === 0 ? 'none' : n.list(parts);
      return `${from === to ? n.stitches(from) : `${lengthsOf(from, to)} stitches`}: ${floats}`;
    },
    lengthsOf,
    help: 'A bar goes to the next float of its length.',
    over: (floats: number): string =>
      floats === 0 ? 'None is too long.' : `**${n.count(floats, 'float')}** too long.`,
    /** Where floats are hooked or latched up. */
    held: (floats: number): string =>
      `${n.count(floats, 'float is', 'floats are')} hooked or latched up, and ${floats === 1 ? 'counts' : 'count'} by the longest part that lies loose.`,
    covered: (floats: number, over: number): string =>
      `${n.count(floats, 'float')} inside a hem or lining${over === 0 ? '' : `, ${over} over the limit`}: covered.`,
    /** Where a bar went. */
    went: (row: number, run: Run, stitches: number, yarn: string): string =>
      `Row ${row}: ${yarn} floats over ${n.stitches(stitches)}, needles ${label(run.first)} to ${label(run.last)}.`,
  },
};
