/** The dialog that sets letters in cells. Strong numbers are marked; see ../marked.ts. */
import type { FinishedFace, Shows } from '../../bed/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

const faces: Readonly<Record<FinishedFace, string>> = { knit: 'knit side', purl: 'purl side' };

export const lettering = {
  title: 'Lettering',
  text: 'Text',
  textHint: 'Enter begins a new line.',
  font: 'Typeface',
  /** Shows what a typeface is like. */
  sample: 'Aa Bb 12',
  yarn: 'Yarn',
  letterSpacing: 'Extra space between letters',
  lineSpacing: 'Extra space between lines',
  more: 'cells',
  moreRows: 'rows',
  align: 'Align lines',
  alignments: { left: 'left', centre: 'centre', right: 'right' },
  preview: 'How it comes out',
  previewOf: (text: string, width: number, height: number): string =>
    `${text
      .trim()
      .split(/\s*\n\s*/)
      .join(', ')} in cells, ${n.size(width, height)}`,
  nothing: 'Write a word, and it shows here in cells.',
  notYet: 'It shows here as soon as it can be set.',
  size: (width: number, height: number, widthMm: number, heightMm: number, unit: LengthUnit): string =>
    `**${n.size(width, height)}**, knitted **${lengths.acrossUnbroken(widthMm, heightMm, unit)}**.`,
  /** Which face it reads on, and what the needles show. */
  reads: (shows: Shows, face: FinishedFace): string => {
    if (shows === 'needles') return 'It reads on the **purl side**, which is worn and faces you on the needles.';
    return face === 'knit'
      ? 'It reads on the **knit side**, which is worn. On the needles you see it mirrored.'
      : 'It reads on the **purl side**, which is worn and faces you on the needles.';
  },
  readsLaidMirrored:
    'The chart is drawn as on the needles, so the letters are placed mirrored there: worn, they read on the **knit side**.',
  comesOutMirrored: (face: FinishedFace): string =>
    `Worn, it comes out mirrored: the chart is drawn as on the needles, and the ${faces[face]} is worn.`,
  layMirrored: 'Place it mirrored',
  layMirroredHint: 'So that it reads when worn.',
  tooLarge: (width: number, height: number): string =>
    `It is larger than the motif, ${n.size(width, height)}: what falls outside is left off.`,
  grow: (width: number, height: number): string => `Make the motif ${n.size(width, height)}`,
  grown: (width: number, height: number): string => `The motif has ${n.size(width, height)} now.`,
  place: 'Place it on the chart',
};
