/** How near characters stand together in the sheet's font, as it was looked up beforehand (`kerning.ts`). */
import { KERNING } from './kerning.ts';

/** What is set as one glyph: a character, or a few that the font joins. */
export interface Unit {
  readonly text: string;
  /** The glyph's number in the font; null for the one that the font has for the character. */
  readonly glyph: number | null;
}

/** Of three characters, which no word of a sheet has. */
const OTHER_LIGATURES = /ff[ft]/;

export class Kerning {
  private readonly units = new Map<string, Unit>();
  private readonly ligatures: readonly (readonly [text: string, standsIn: string])[];
  private readonly added = new Map<string, number>();

  constructor(weight: keyof typeof KERNING) {
    const { characters, ligatures, pairs } = KERNING[weight];
    for (const text of characters) this.units.set(text, { text, glyph: null });
    for (const [text, { standsIn, glyph }] of Object.entries(ligatures)) this.units.set(standsIn, { text, glyph });
    this.ligatures = Object.entries(ligatures).map(([text, { standsIn }]) => [text, standsIn]);
    for (const line of pairs.split('\n')) {
      const [first = '', ...groups] = line.split('\t');
      for (const group of groups) {
        const behind = group.indexOf(' ');
        for (const second of group.slice(behind + 1)) this.added.set(first + second, Number(group.slice(0, behind)));
      }
    }
  }

  /** What a text is set as, in its order, and how much is added before each, in 1/1000 of the size; null where that is not known of all its characters. */
  set(text: string): { readonly unit: Unit; readonly before: number }[] | null {
    const set: { unit: Unit; before: number }[] = [];
    if (OTHER_LIGATURES.test(text)) return null;
    let last = '';
    for (const character of this.joined(text)) {
      const unit = this.units.get(character);
      if (unit === undefined) return null;
      // Nothing behind a blank: the library itself sets word by word, each with the blank behind it.
      set.push({ unit, before: last === ' ' ? 0 : (this.added.get(last + character) ?? 0) });
      last = character;
    }
    return set;
  }

  /** From the beginning on, as the font does. */
  private joined(text: string): string {
    if (!text.includes('f')) return text;
    return this.ligatures.reduce((whole, [part, standsIn]) => whole.replaceAll(part, standsIn), text);
  }
}

const kept = new Map<string, Kerning>();

/** Of a weight of the font; read out once. */
export function kerningOf(weight: keyof typeof KERNING): Kerning {
  const found = kept.get(weight);
  if (found) return found;
  const kerning = new Kerning(weight);
  kept.set(weight, kerning);
  return kerning;
}
