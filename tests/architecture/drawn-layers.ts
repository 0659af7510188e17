/** The layers as DEVELOPERS.md draws them. */

/**
 * By the name of a folder of sources its folders, the lines of its drawing from
 * the top down: the names that stand before two blanks.
 */
export function drawnLayers(guide: string): ReadonlyMap<string, readonly (readonly string[])[]> {
  const drawings = guide.matchAll(/^```layers (\S+)\n([^]*?)^```$/gm);
  return new Map(
    [...drawings].map(([, name = '', text = '']) => [
      name,
      text
        .trimEnd()
        .split('\n')
        .map((line) => (line.split('  ')[0] ?? '').split(' ')),
    ]),
  );
}
