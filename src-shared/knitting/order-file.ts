/**
 * A knitter's order as text: kept with the piece on the needles, so that it can
 * be knitted to its end whatever becomes of its design.
 */
import { opposite, type Slot } from '../bed/index.ts';
import { crc32 } from '../checksum/index.ts';
import { problemError } from '../problem/index.ts';
import { checked } from '../schema/index.ts';
import type { KnittingOrder, YarnRun } from './model.ts';
import { orderTextSchema, type OrderText } from './order-model.ts';

/** The order as a line of text, the same for the same order. */
export function orderToText(knitting: KnittingOrder): string {
  const known = new Map<string, number>();
  const kinds: [first: Slot, last: Slot, yarn: number][][] = [];
  const rows = knitting.contrast.map((runs) => {
    const written = runs.map(({ first, last, yarn }): [Slot, Slot, number] => [first, last, yarn]);
    const key = JSON.stringify(written);
    const kind = known.get(key) ?? kinds.push(written) - 1;
    known.set(key, kind);
    return kind;
  });
  // An act more in the running order does not compile here before the schema has it.
  const { order, groups, yarns, mainYarn, motifs, chooses } = knitting;
  const whole: OrderText = { order, contrast: { kinds, rows }, groups, yarns, mainYarn, motifs, chooses };
  return JSON.stringify(whole);
}

/** Tells orders apart: how long their text is, and its checksum. */
export function digestOf(orderText: string): string {
  const bytes = new Uint8Array(orderText.length * 2);
  for (let at = 0; at < orderText.length; at++) {
    const unit = orderText.charCodeAt(at);
    bytes[2 * at] = unit & 255;
    bytes[2 * at + 1] = unit >> 8;
  }
  return `${orderText.length}-${crc32(bytes).toString(16).padStart(8, '0')}`;
}

/** The inverse of {@link orderToText}. Throws `order-unreadable` for a text that holds no order, or one that cannot be followed. */
export function orderFromText(text: string): KnittingOrder {
  const read = checked(orderTextSchema, parsed(text));
  if (!read.ok) throw problemError('order-unreadable', {});
  const { contrast, ...facts } = read.value;
  const kinds = contrast.kinds.map((runs) => runs.map(([first, last, yarn]): YarnRun => ({ first, last, yarn })));
  const rows = contrast.rows.map((kind) => kinds[kind]);
  const knitting = { ...facts, contrast: rows as KnittingOrder['contrast'] };
  if (rows.includes(undefined) || !canBeFollowed(knitting)) throw problemError('order-unreadable', {});
  return knitting;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Whether each row follows the one before, the carriage going to and fro, from a stop at 0 to one behind the last row. */
function canBeFollowed({ order, contrast, yarns, mainYarn }: KnittingOrder): boolean {
  let reading = 0;
  let side = order[0]?.carriageAt;
  let mayStretch = false;
  for (const [index, item] of order.entries()) {
    const isEnd = index === order.length - 1;
    if (item.carriageAt !== side || item.needles.first > item.needles.last) return false;
    if (item.kind === 'stop') {
      if (item.counter !== reading || item.row !== (isEnd ? null : reading + 1)) return false;
      if (!isEnd) reading++;
      side = opposite(side);
    } else {
      if (isEnd || !mayStretch || item.first !== reading + 1 || item.last < item.first) return false;
      if ((item.last - reading) % 2 === 1) side = opposite(side);
      reading = item.last;
    }
    mayStretch = item.kind === 'stop';
  }
  const isYarn = (yarn: number): boolean => yarn < yarns.length;
  const runs = contrast.every((row) => row.every(({ first, last, yarn }) => first <= last && isYarn(yarn)));
  return reading === contrast.length && runs && isYarn(mainYarn);
}
