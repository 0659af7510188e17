/** The name of a file in its path, of whatever platform. */
export function fileNameOf(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}
