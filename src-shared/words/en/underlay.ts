/** The picture behind a chart that is traced. */
import { numbers as n } from './numbers.ts';

export const underlay = {
  title: 'Picture to trace',
  none: 'A picture behind the chart shows through its ground while you draw over it.',
  place: 'Size and place',
  placeHint: 'With the Trace tool, drag the picture or nudge it with the arrow keys.',
  isShown: 'Show it',
  strength: 'How strongly',
  columns: 'Stitches it covers',
  rows: 'Rows it covers',
  left: 'Starts, stitches from the left',
  bottom: 'Starts, rows from the bottom',
  commands: {
    add: 'Add a picture to trace',
    replace: 'Take another picture to trace',
    remove: 'Remove the picture to trace',
    show: 'Show the picture to trace',
    larger: 'Make the picture to trace larger',
    smaller: 'Make the picture to trace smaller',
    stronger: 'Show the picture to trace more strongly',
    fainter: 'Show the picture to trace more faintly',
  },
  reading: 'Reading the picture.',
  laid: 'The picture lies behind the chart.',
  removed: 'The picture is removed.',
  shown: 'The picture shows.',
  hidden: 'The picture is hidden.',
  noneYet: 'There is no picture to trace yet. Shift+Q adds one.',
  strengthIs: (opacity: number): string => `It shows at ${n.percent(opacity)}.`,
  sizeIs: (columns: number, rows: number): string => `It covers ${n.plain(columns)} stitches × ${n.plain(rows)} rows.`,
  placeIs: (left: number, bottom: number): string =>
    `It starts ${n.plain(left)} stitches from the left and ${n.plain(bottom)} rows from the bottom.`,
};
