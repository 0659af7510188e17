/** Finding commands by what a person types: their own names first, then the names that others know them by. */
import type { Synonyms } from '@shared/words/synonyms.ts';
import type { Command } from './command.ts';

/** How well a command answers: the parts that begin a word of its name, stand in its name, or begin a word of another name. */
const BEGINS = 0;
const IN_NAME = 1;
const OTHER_NAME = 2;

/**
 * The commands that answer every word of `typed`, the nearest first: those whose
 * name has a word that begins so, then those with it anywhere in their name,
 * then those known by another name of `synonyms`. All of them, as they stand, for
 * nothing typed.
 */
export function findCommands(commands: readonly Command[], typed: string, synonyms: Synonyms): readonly Command[] {
  const parts = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const ranked = commands.flatMap((command) => {
    const ranks = parts.map((part) => rankOf(command.label(), synonyms[command.id] ?? '', part));
    return ranks.includes(null) ? [] : [{ command, rank: Math.max(BEGINS, ...(ranks as number[])) }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ command }) => command);
}

function rankOf(label: string, otherNames: string, part: string): number | null {
  const name = label.toLowerCase();
  if (beginsAWord(name, part)) return BEGINS;
  if (name.includes(part)) return IN_NAME;
  return beginsAWord(otherNames, part) ? OTHER_NAME : null;
}

function beginsAWord(text: string, part: string): boolean {
  return text.startsWith(part) || text.includes(` ${part}`);
}
