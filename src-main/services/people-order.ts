/** The order of names that people look through. */

let collator: Intl.Collator | null = null;

/** Below 0 where `one` comes first: `star 2` before `star 10`, whether large or small letters. */
export function comparedInOrder(one: string, other: string): number {
  // Made when it is first asked for, or every command would wait for it at its start.
  collator ??= new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  return collator.compare(one, other);
}
