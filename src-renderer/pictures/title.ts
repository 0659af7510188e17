/** What a picture is called that was read from a file. */

/** `lighthouse.png` → `lighthouse`. */
export function titleOf(name: string): string {
  return name.replace(/\.[^.]+$/, '') || name;
}
