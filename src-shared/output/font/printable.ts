/**
 * Text as the sheet's font can show it.
 *
 * Names come from people and may hold any character. What the font lacks is
 * replaced by a visible mark, one a character, and the sheet says what the mark
 * stands for: a wrong letter printed silently would be worse than a gap.
 */
import type { Rich } from '../../words/index.ts';
import { hasCharacter } from './metrics.ts';

/** Stands for a character that the font lacks; the font has it. */
export const MISSING_MARK = '□';

/** Characters that show nothing by themselves: joiners, selectors, direction marks. */
const INVISIBLE = /\p{Default_Ignorable_Code_Point}/gu;
/** Line ends, tabs and other controls, and wide blanks: all read as one blank. A no-break space stays. */
const BLANKS = /[\p{Cc}\p{Zl}\p{Zp}\u2000-\u200a\u202f\u205f\u3000 ]+/gu;

/** ASCII with single blanks: most of a sheet, and printable as it is. */
const AS_IT_IS = /^(?:[!-~]| (?! ))*$/;

/** The text in characters of the font, composed (NFC), blanks single. */
export function printable(text: string): string {
  if (AS_IT_IS.test(text)) return text;
  let result = '';
  for (const character of text.normalize('NFC').replace(INVISIBLE, '').replace(BLANKS, ' ')) {
    result += hasCharacter(character.codePointAt(0) as number) ? character : MISSING_MARK;
  }
  return result;
}

/** The same for text with strong parts. */
export function printableRich(spans: Rich): Rich {
  return spans.map((span) => ({ ...span, text: printable(span.text) }));
}

/** True if {@link printable} has to leave a mark for something in the text. */
export function hasMissing(text: string): boolean {
  return printable(text.replaceAll(MISSING_MARK, '')).includes(MISSING_MARK);
}
