/**
 * Patches that still fit where their neighbours changed.
 *
 * A patch is a unified diff of which the numbers are not read: each piece of it
 * goes where its own lines stand, which must be one place and no other. So a
 * line of context or two is enough, chosen so that they say where they belong.
 */

/** Neighbouring lines that change: as they stand, and as they are to stand. */
export interface Piece {
  readonly before: readonly string[];
  readonly after: readonly string[];
}

export interface PatchedFile {
  /** The path from the project's folder, `/` between its parts. */
  readonly path: string;
  /** True if the patch makes the file. */
  readonly isNew: boolean;
  readonly pieces: readonly Piece[];
}

/** Reads a unified diff. Throws `Error` for a line that belongs to none. */
export function parsePatch(text: string): PatchedFile[] {
  const files: { path: string; isNew: boolean; pieces: { before: string[]; after: string[] }[] }[] = [];
  let isNew = false;
  text.split('\n').forEach((line, index) => {
    const file = files.at(-1);
    const piece = file?.pieces.at(-1);
    if (line.startsWith('--- ')) isNew = line === '--- /dev/null';
    else if (line.startsWith('+++ ')) files.push({ path: line.slice(4).replace(/^b\//, ''), isNew, pieces: [] });
    else if (line.startsWith('@@') && file) file.pieces.push({ before: [], after: [] });
    else if (piece && /^[ +-]/.test(line)) {
      if (!line.startsWith('+')) piece.before.push(line.slice(1));
      if (!line.startsWith('-')) piece.after.push(line.slice(1));
      // Editors take the blank from the end of an empty line; prose stands before the first file.
    } else if (piece && line === '' && index < text.split('\n').length - 1) {
      piece.before.push('');
      piece.after.push('');
    } else if (file && line !== '' && !line.startsWith('diff ') && !line.startsWith('index '))
      throw new Error(`Line ${index + 1} of the patch belongs to no piece: ${line}`);
  });
  return files;
}

/**
 * The text of a file with all pieces of its patch; `text` is null where there is no
 * such file. Throws `Error` that names a piece which fits nowhere, or in several places.
 */
export function patched({ path, isNew, pieces }: PatchedFile, text: string | null): string {
  if (isNew !== (text === null)) throw new Error(`${path} is ${isNew ? 'there already' : 'not there'}`);
  if (text === null) return `${pieces.flatMap(({ after }) => after).join('\n')}\n`;
  return pieces
    .reduce((lines, { before, after }) => {
      const places = placesOf(before, lines);
      const [place] = places;
      if (place === undefined || places.length > 1) {
        const where = places.length === 0 ? 'nowhere' : `in ${places.length} places`;
        throw new Error(`These lines stand ${where} in ${path}:\n${before.map((line) => `  ${line}`).join('\n')}`);
      }
      return [...lines.slice(0, place), ...after, ...lines.slice(place + before.length)];
    }, text.split('\n'))
    .join('\n');
}

/** Where some lines begin that follow each other. */
function placesOf(some: readonly string[], lines: readonly string[]): number[] {
  if (some.length === 0) return [];
  return lines.flatMap((_, at) => (some.every((line, index) => lines[at + index] === line) ? [at] : []));
}
