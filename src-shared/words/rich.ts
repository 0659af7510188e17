/** Text in which the figures that matter stand strong. */

import { segments, type Segment } from './marked.ts';

export type Span = Segment;

export type Rich = readonly Span[];

/** The part of a sentence that the eye should find first. */
export function strong(text: string | number): Span {
  return { text: String(text), isStrong: true };
}

/**
 * A sentence with strong parts: `` rich`Set up with the row counter at ${strong(59)}.` ``.
 * Plain strings and numbers read as the text around them; another `Rich` is spliced in.
 */
export function rich(parts: readonly string[], ...values: readonly (string | number | Span | Rich)[]): Rich {
  const spans: Span[] = [];
  parts.forEach((part, index) => {
    spans.push({ text: part, isStrong: false });
    const value = values[index];
    if (value === undefined) return;
    if (typeof value === 'string' || typeof value === 'number') spans.push({ text: String(value), isStrong: false });
    else if ('isStrong' in value) spans.push(value);
    else spans.push(...value);
  });
  return joined(spans);
}

/** Text without strong parts. */
export function plain(text: string): Rich {
  return text === '' ? [] : [{ text, isStrong: false }];
}

/** Text whose strong parts stand between two asterisks on each side. */
export function fromMarked(marked: string): Rich {
  return segments(marked);
}

/** What is read out: the text alone. */
export function textOf(spans: Rich): string {
  return spans.map((span) => span.text).join('');
}

/** Neighbouring spans of one weight made one, empty ones left out. */
export function joined(spans: Rich): Rich {
  const result: { text: string; readonly isStrong: boolean }[] = [];
  for (const { text, isStrong } of spans) {
    if (text === '') continue;
    const last = result.at(-1);
    if (last?.isStrong === isStrong) last.text += text;
    else result.push({ text, isStrong });
  }
  return result;
}
