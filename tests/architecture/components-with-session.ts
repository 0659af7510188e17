/**
 * The components that have the whole session. All others are given values and
 * callbacks, so that it is seen where they are used what they show and do.
 */

/** Those that put others together, and give them what they need of it. */
export const ROOTS: readonly string[] = [
  'src-renderer/knit/KnitBench.svelte',
  'src-renderer/motif/MotifBench.svelte',
  'src-renderer/piece/PieceBench.svelte',
  'src-renderer/piece/panel/PieceForms.svelte',
  'src-renderer/reading-in/ReadingIn.svelte',
  'src-renderer/sheet/SheetBench.svelte',
  'src-renderer/window/App.svelte',
  'src-renderer/window/OpenDialogs.svelte',
];

/** True if a component names the session or its type, outside comments and the paths of imports. */
export function hasSession(source: string): boolean {
  const code = source.replace(/<!--[\s\S]*?-->|\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, '');
  return /(?<![\w'"/.-])[sS]ession(?![\w'"/-])/.test(code);
}
