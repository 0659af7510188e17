/** Which titles of tests went, and whether each is accounted for. */

/** A title as it is listed: the file from `tests/`, then what it stands in, then itself, ` › ` between them. */
export type Title = string;

/** Where a test went, or a whole file of tests. */
export interface Moved {
  /** A title, or a file for all titles in it. */
  readonly old: string;
  /** What it is called now, or null where it is gone. */
  readonly now: string | null;
  readonly why: string;
}

export interface Comparison {
  /** Titles that went without a line that says so. */
  readonly unaccounted: readonly Title[];
  /** Titles that a line says a test has now, and none has. */
  readonly missing: readonly Title[];
  /** Lines about what is still there, or never was. */
  readonly idle: readonly Moved[];
}

const fileOf = (title: Title): string => title.split(' › ')[0] as string;

/** Compares what was recorded with what the runners list now. A title that stands twice must stand twice. */
export function compareTitles(recorded: readonly Title[], now: readonly Title[], moved: readonly Moved[]): Comparison {
  const left = counted(now);
  const gone = recorded.filter((title) => !takeOne(left, title));
  const byOld = new Map(moved.map((line) => [line.old, line]));
  const used = new Set<Moved>();
  const unaccounted: Title[] = [];
  const missing: Title[] = [];
  for (const title of gone) {
    const line = byOld.get(title) ?? byOld.get(fileOf(title));
    if (!line || line.why.trim() === '') {
      unaccounted.push(title);
      continue;
    }
    used.add(line);
    if (line.now === null) continue;
    const expected = line.old === title ? line.now : line.now + title.slice(line.old.length);
    if (!now.includes(expected)) missing.push(expected);
  }
  return { unaccounted, missing, idle: moved.filter((line) => !used.has(line)) };
}

function counted(titles: readonly Title[]): Map<Title, number> {
  const counts = new Map<Title, number>();
  for (const title of titles) counts.set(title, (counts.get(title) ?? 0) + 1);
  return counts;
}

function takeOne(counts: Map<Title, number>, title: Title): boolean {
  const count = counts.get(title) ?? 0;
  counts.set(title, count - 1);
  return count > 0;
}
