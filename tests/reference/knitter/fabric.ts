/** The fabric as it came off the needles, and how it differs from what was designed. */
import { each, labelOf, positionOf, type Side } from './needles.ts';

export interface Run {
  readonly first: string;
  readonly last: string;
  readonly yarn: string;
}

export interface FabricRow {
  readonly row: number;
  /** The side that the carriage left. */
  readonly from: Side;
  readonly edges: readonly [first: string, last: string];
  /** The yarns of all needles, from left to right; neighbours in one yarn are one run. */
  readonly runs: readonly Run[];
}

export interface WrapMade {
  readonly row: number;
  readonly needle: string;
}

/** The row of a yarn for each needle. */
export function fabricRow(row: number, from: Side, yarns: ReadonlyMap<number, string>): FabricRow {
  const needles = [...yarns.keys()].sort((a, b) => a - b);
  const runs: { first: number; last: number; yarn: string }[] = [];
  for (const needle of needles) {
    const yarn = yarns.get(needle) as string;
    const before = runs.at(-1);
    if (before && before.yarn === yarn && before.last === needle - 1) before.last = needle;
    else runs.push({ first: needle, last: needle, yarn });
  }
  return {
    row,
    from,
    edges: [labelOf(needles[0] as number), labelOf(needles.at(-1) as number)],
    runs: runs.map(({ first, last, yarn }) => ({ first: labelOf(first), last: labelOf(last), yarn })),
  };
}

/** The yarn of each needle of a row. */
export function yarnsOf({ runs }: Pick<FabricRow, 'runs'>): Map<number, string> {
  const yarns = new Map<number, string>();
  for (const { first, last, yarn } of runs) {
    for (const needle of each([positionOf(first), positionOf(last)])) yarns.set(needle, yarn);
  }
  return yarns;
}

export interface Compared {
  readonly fabric: readonly FabricRow[];
  readonly wraps: readonly WrapMade[];
}

/** Every needle of every row, and every wrap, in which what was knitted is not what was designed. */
export function differences(knitted: Compared, design: Compared): string[] {
  const found: string[] = [];
  const rows = Math.max(knitted.fabric.length, design.fabric.length);
  for (let at = 0; at < rows; at++) {
    const [was, should] = [knitted.fabric[at], design.fabric[at]];
    if (!was || !should) {
      found.push(`row ${at + 1} is ${was ? 'knitted, but not designed' : 'designed, but not knitted'}`);
      continue;
    }
    if (was.from !== should.from) found.push(`row ${was.row} is knitted from the ${was.from}, not the ${should.from}`);
    const [yarns, designed] = [yarnsOf(was), yarnsOf(should)];
    for (const needle of new Set([...yarns.keys(), ...designed.keys()])) {
      const [yarn = 'nothing', asked = 'nothing'] = [yarns.get(needle), designed.get(needle)];
      if (yarn !== asked) found.push(`row ${was.row}, ${labelOf(needle)}: ${yarn}, not ${asked}`);
    }
  }
  const key = ({ row, needle }: WrapMade): string => `row ${row}, ${needle}`;
  const [made, asked] = [knitted.wraps.map(key), design.wraps.map(key)];
  found.push(...made.filter((wrap) => !asked.includes(wrap)).map((wrap) => `${wrap}: wrapped, but not designed so`));
  found.push(...asked.filter((wrap) => !made.includes(wrap)).map((wrap) => `${wrap}: not wrapped`));
  return found;
}

/**
 * The finished face, rows from the cast-on up and stitches from the left as
 * seen; null beside the piece. The purl side faces the knitter, so the knit
 * side is seen mirrored.
 */
export function finishedFace(fabric: readonly FabricRow[], face: 'knit' | 'purl'): (string | null)[][] {
  const rows = fabric.map(yarnsOf);
  const needles = rows.flatMap((row) => [...row.keys()]);
  const first = needles.reduce((least, needle) => Math.min(least, needle), Infinity);
  const last = needles.reduce((most, needle) => Math.max(most, needle), -Infinity);
  return rows.map((row) => {
    const asKnitted = each([first, last]).map((needle) => row.get(needle) ?? null);
    return face === 'knit' ? asKnitted.reverse() : asKnitted;
  });
}
