/**
 * Sentences with their numbers set strong.
 *
 * Words mark what is strong with two asterisks on each side. A screen sets the
 * segments, a line of text leaves the marks out. Names that people choose never
 * go into marked text: an asterisk in them would be taken for a mark.
 */
export interface Segment {
  readonly text: string;
  readonly isStrong: boolean;
}

/** The parts of a marked sentence in order, none of them empty. */
export function segments(marked: string): Segment[] {
  return marked
    .split('**')
    .map((text, index) => ({ text, isStrong: index % 2 === 1 }))
    .filter(({ text }) => text !== '');
}

/** A marked sentence without its marks. */
export function plainText(marked: string): string {
  return marked.replaceAll('**', '');
}

/** A phrase as a sentence begins with it: `Rows 4–7`. It begins with a letter, not with a mark. */
export function capitalised(phrase: string): string {
  return phrase.charAt(0).toUpperCase() + phrase.slice(1);
}
