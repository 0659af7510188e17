/** The dialog that turns any picture into a motif. Strong numbers are marked; see ../marked.ts. */
import type { LengthUnit } from '../../length/index.ts';
import type { Progress } from '../../reading/index.ts';
import type { Gauge } from '../../piece/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { reading } from './reading.ts';

export const fromPicture = {
  title: 'Turn a picture into a motif',
  size: 'Size',
  stitches: 'Stitches',
  rows: 'Rows',
  linked: 'Keep the proportion',
  linkedHint: (gauge: Gauge, unit: LengthUnit): string =>
    `From ${lengths.gaugeCounts(gauge, unit)} in ${lengths.gaugeLength(unit)}.`,
  knitted: (width: number, height: number, widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `**${n.size(width, height)}**, knitted **${lengths.acrossUnbroken(widthMm, heightMm, unit)}**`,
  colours: 'Colours',
  yarns: 'Yarns',
  dithering: 'Speckle',
  ditheringHint: 'Suggests in-between shades.',
  keepEdges: 'Keep edges crisp',
  part: 'Part of the picture',
  left: 'From the left',
  top: 'From the top',
  width: 'Width',
  height: 'Height',
  pixels: 'px',
  whole: 'Use all of it',
  picture: (name: string): string => `The picture ${name}`,
  pictureHelp: 'Drag a corner; or press it and then where it goes; or give the part in numbers.',
  wholePart: (left: number, top: number): string => `The part as a whole, from ${n.plain(left, 0)}, ${n.plain(top, 0)}`,
  chart: 'The motif',
  chartOf: (name: string, width: number, height: number): string => `${name} in cells, ${n.size(width, height)}`,
  progress: ({ stage }: Progress): string => `${reading.stage(stage)}…`,
  working: 'Working…',
  stop: 'Stop',
  stopped: 'Stopped.',
  again: 'Continue',
  yarnsUsed: 'Yarns it takes',
  newYarn: (name: string): string => `${name}, new`,
  replaces: (motif: string): string => `It takes the place of ${motif}; Undo brings that back.`,
  take: 'Use it',
  taken: (motif: string, width: number, height: number): string => `${motif} is now ${n.size(width, height)}.`,
};
