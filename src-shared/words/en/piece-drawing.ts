/** What is written on the drawing of a piece, beside its spaces, and said of a stitch of it. */
import { label } from '../../bed/index.ts';
import type { FloatNear, NeedleActKind, StitchFacts, StitchPlace } from '../../plan/index.ts';
import { numbers as n } from './numbers.ts';
import { runningOrder } from './running-order.ts';

const PLACES: { readonly [Place in StitchPlace]: string } = {
  edge: 'edge stitch',
  first: 'first of the pattern',
  last: 'last of the pattern',
  'last-before-gap': 'last before the gap',
  'first-after-gap': 'first after the gap',
};

/** A yarn by its part in the fabric; its own name where there are more than two. */
function yarn({ role }: Pick<StitchFacts, 'role'>, name: string, yarns: number): string {
  return yarns > 2 && role === 'contrast' ? `${role} ${name}` : role;
}

/** `float of 25 to the right`, `main float of 9 across it`, `main float of 22 across it (held: 5 lie loose)`. */
function float({ where, role, stitches, isOver, loose }: FloatNear, isSameYarn: boolean): string {
  const phrase = `${isSameYarn ? '' : `${role} `}float of ${stitches}${isOver ? ', too long,' : ''}`;
  const place = where === 'across' ? 'across it' : `to the ${where}`;
  const held = loose === null ? '' : ` (held: ${loose} ${loose === 1 ? 'lies' : 'lie'} loose)`;
  return `${phrase} ${place}${held}`;
}

export const pieceDrawing = {
  /** The longest float of each row, beside the row numbers. */
  profile: {
    title: 'longest floats',
    label: 'Longest floats, row by row',
    help: 'Arrow keys go from row to row; Page Up and Page Down go 10 rows.',
    /** `Row 33: longest float 22 stitches, too long`, and what the other yarns float over: `slate 3`. */
    row: (
      row: number,
      stitches: number,
      isOver: boolean,
      others: readonly { readonly name: string; readonly stitches: number }[],
    ): string =>
      stitches === 0
        ? `Row ${row}: no float`
        : [
            `Row ${row}: longest float ${n.stitches(stitches)}${isOver ? ', too long' : ''}`,
            ...others.map((other) => `${other.name} ${other.stitches}`),
          ].join('; '),
  },
  group: {
    number: (index: number): string => String(index + 1),
    /** The outermost groups say at which side they are seen when worn. */
    worn: (index: number, side: 'left' | 'right'): string => `${index + 1} · ${side} as worn`,
  },

  /** `Row 42 · needle L13 · contrast, last before the gap · carriage at the right · float of 25 to the right`. */
  stitch(facts: StitchFacts, acts: readonly NeedleActKind[], yarnName: string, yarns: number): string {
    const place = facts.place === null ? '' : PLACES[facts.place];
    const knitted = [yarn(facts, yarnName, yarns), facts.isAnchor ? 'anchor stitch' : place];
    const nearest = facts.floats[0];
    return [
      `Row ${facts.row}`,
      `needle ${label(facts.needle)}`,
      knitted.filter((part) => part !== '').join(', '),
      `carriage at the ${facts.from}`,
      nearest ? float(nearest, nearest.role === facts.role) : '',
      ...acts.map(runningOrder.onNeedle),
    ]
      .filter((part) => part !== '')
      .join(' · ');
  },
};
