/** A piece of more rows than are counted before it is killed. */
import type { Beginning, KnittingEvent } from '@shared/journal/index.ts';
import { digestOf, orderToText } from '@shared/knitting/index.ts';
import { knittingOf, trial } from '../unit/knitting/knitting.ts';

let made: Beginning | null = null;

export function tallPiece(): Beginning {
  return (made ??= make());
}

function make(): Beginning {
  const order = orderToText(knittingOf(trial({ rows: 3000 })));
  return {
    of: {
      project: { name: 'tall', path: null },
      piece: { id: 'piece-1', name: 'tall' },
      size: { id: 'size-1', name: '' },
      copy: 1,
    },
    digest: digestOf(order),
    order,
  };
}

/** The row above a reading, done. */
export function counted(reading: number): { readonly id: string; readonly event: KnittingEvent } {
  return { id: `row-done-at-${reading}`, event: { kind: 'row-done', reading } };
}
