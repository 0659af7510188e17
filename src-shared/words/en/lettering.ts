/** The dialog that sets letters in cells. Strong numbers are marked; see ../marked.ts. */
import type { FinishedFace, Shows } from '../../bed/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { LettersPlace } from '../../motif/lettering/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

const faces: Readonly<Record<FinishedFace, string>> = { knit: 'knit side', purl: 'purl side' };

/** A sign that can be read, or the number that Unicode gives one that shows nothing. */
function visible(sign: string): string {
  if (sign === '\t') return 'tab';
  const code = sign.codePointAt(0) ?? 0;
  return /^[\p{C}\p{Z}\p{M}]/u.test(sign) ? `U+${code.toString(16).toUpperCase().padStart(4, '0')}` : sign;
}

type TooLarge = LettersPlace & { readonly why: 'too-large' };

/** Where letters go on the chart, and why there. */
function placed(place: Exclude<LettersPlace, TooLarge>): string {
  const there = `row ${place.at.row + 1}, stitch ${place.at.column + 1}`;
  const covers = place.covered > 0 ? `, over ${n.count(place.covered, 'drawn cell')}` : '';
  switch (place.why) {
    case 'at-cursor':
      return `It goes to ${there}, where the cursor is.`;
    case 'nearest-free':
      return `It goes to ${there}: from the cursor, the nearest place where it fits beside what is drawn.`;
    case 'nothing-free':
      return `There is no free place of its size on the chart. It goes to ${there}${covers}.`;
    case 'centred':
      return `It goes to the middle of the chart, ${there}${covers}.`;
  }
}

/** What is left off of letters that are larger than the motif. */
function leftOff(place: TooLarge): string {
  const parts = [
    { count: place.left, phrase: `${n.stitches(place.left)} at the left` },
    { count: place.right, phrase: `${n.stitches(place.right)} at the right` },
    { count: place.bottom, phrase: `${n.rows(place.bottom)} at the bottom` },
    { count: place.top, phrase: `${n.rows(place.top)} at the top` },
  ];
  return n.list(parts.filter(({ count }) => count > 0).map(({ phrase }) => phrase));
}

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
  /** What the typeface lacks; `isRest`: there is more, which is set. */
  missing: (font: string, signs: readonly string[], isRest: boolean): string =>
    `${font} has no ${signs.map(visible).join(' ')}.${isRest ? ' The rest is shown.' : ''}`,
  otherFont: (font: string, signs: number): string => `Use ${font}, which has ${signs === 1 ? 'it' : 'them'}`,
  place: 'Place',
  places: { near: 'near the cursor', middle: 'in the middle' },
  placed,
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
  tooLarge: (width: number, height: number, place: TooLarge): string =>
    `It is larger than the motif, ${n.size(width, height)}. Left off: ${leftOff(place)}.`,
  grow: (width: number, height: number): string => `Make the motif ${n.size(width, height)}`,
  grown: (width: number, height: number): string => `The motif has ${n.size(width, height)} now.`,
  put: 'Place it on the chart',
};
