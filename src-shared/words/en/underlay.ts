/** The picture behind a chart that is traced. */
import { numbers as n } from './numbers.ts';

export const underlay = {
  title: 'Picture to trace',
  none: 'A picture behind the chart shows through its ground while you draw over it.',
  place: 'Size and place',
  placeHint:
    'With the Trace tool, drag the picture or nudge it with the arrow keys; its corners scale it, the ring above it turns it.',
  isShown: 'Show it',
  strength: 'How strongly',
  turn: 'Turned clockwise',
  columns: 'Stitches it covers',
  rows: 'Rows it covers',
  left: 'Starts, stitches from the left',
  bottom: 'Starts, rows from the bottom',
  /** The handles of its corners, clockwise from the upper left, and the one that turns it. */
  corners: ['Upper left corner', 'Upper right corner', 'Lower right corner', 'Lower left corner'],
  turnHandle: 'Handle that turns the picture',
  handleHelp:
    'Arrow keys move the handle, with Shift ten times as far. Press it, and it goes where the chart is pressed next.',
  reading: 'Reading the picture.',
  laid: 'The picture lies behind the chart.',
  removed: 'The picture is removed.',
  shown: 'The picture shows.',
  hidden: 'The picture is hidden.',
  /** `keys`: the shortcut that adds one; null where it is switched off. */
  noneYet: (keys: string | null): string =>
    `There is no picture to trace yet.${keys === null ? '' : ` ${keys} adds one.`}`,
  strengthIs: (opacity: number): string => `It shows at ${n.percent(opacity)}.`,
  sizeIs: (columns: number, rows: number): string => `It covers ${n.plain(columns)} stitches × ${n.plain(rows)} rows.`,
  turnIs: (degrees: number): string =>
    degrees === 0
      ? 'It stands straight.'
      : `It is turned ${n.plain(Math.abs(degrees))}° ${degrees > 0 ? 'clockwise' : 'anticlockwise'}.`,
  placeIs: (left: number, bottom: number): string =>
    `It starts ${n.plain(left)} stitches from the left and ${n.plain(bottom)} rows from the bottom.`,
};
