/** Names for yarns that come into a project. */

/**
 * The first name that no yarn of `taken` has, of those that `name` gives from
 * the number `from` on: the same for the same yarns, and never one that is there,
 * in capitals or not.
 */
export function freeYarnName(taken: readonly string[], from: number, name: (index: number) => string): string {
  const known = new Set(taken.map((one) => one.trim().toLowerCase()));
  let index = from;
  while (known.has(name(index).toLowerCase())) index++;
  return name(index);
}
