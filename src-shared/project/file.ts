/**
 * A project as the text of a `.walewright` file, and back.
 *
 * The text is the same for the same project (fixed key order, two blanks of
 * indent, one line a chart row, a newline at the end), so that versions can be
 * compared line by line.
 */
import { problemError } from '../problem/index.ts';
import { checked, plainOf, z } from '../schema/index.ts';
import { broughtUpToDate, FILE_FORMAT, FILE_VERSION } from './migrate.ts';
import { checkTogether } from './checks.ts';
import { projectFields, type Project } from './model.ts';

/** What a project file of the present version holds, and the {@link Project} that it is. */
export const projectFileSchema = z.codec(
  z
    .strictObject({ format: z.literal(FILE_FORMAT), version: z.literal(FILE_VERSION), ...projectFields })
    .check(checkTogether),
  z.custom<Project>(),
  {
    decode: ({ format: _format, version: _version, ...project }) => project,
    encode: (project) => ({ format: FILE_FORMAT, version: FILE_VERSION, ...project }) as never,
  },
);

/** The plain data of a project, keys in the order of the file. */
export type ProjectFile = z.input<typeof projectFileSchema>;

function projectToFile(project: Project): ProjectFile {
  return plainOf(projectFileSchema, project);
}

/** The text of a project file. */
export function projectToText(project: Project): string {
  return `${JSON.stringify(projectToFile(project), null, 2)}\n`;
}

/**
 * Reads the text of a project file.
 * Throws `project-not-json`, `project-not-ours`, `project-newer` or
 * `project-invalid` (with the path of the first wrong field).
 */
export function projectFromText(text: string): Project {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    throw problemError('project-not-json', { detail: (error as Error).message });
  }
  if (typeof raw !== 'object' || raw === null || (raw as { format?: unknown }).format !== FILE_FORMAT) {
    throw problemError('project-not-ours', {});
  }
  const version = (raw as { version?: unknown }).version;
  if (typeof version === 'number' && version > FILE_VERSION) {
    throw problemError('project-newer', { version, known: FILE_VERSION });
  }
  const read = checked(projectFileSchema, broughtUpToDate(raw));
  if (!read.ok) throw problemError('project-invalid', { path: placeIn(read.wrong.path), fault: read.wrong.fault });
  return read.value;
}

/** The version of a project file that the program wrote, without reading the rest of it; null for other texts. */
export function fileVersionOf(text: string): number | null {
  const [, version] = WRITTEN.exec(text) ?? [];
  return version === undefined ? null : Number(version);
}

const WRITTEN = new RegExp(`^\\{\\s*"format": "${FILE_FORMAT}",\\s*"version": (\\d{1,6}),`);

/** A way through the file as a person counts: `motifs[1].rows[2]`. */
function placeIn(path: readonly (string | number)[]): string {
  return path
    .map((part) => (typeof part === 'number' ? `[${part + 1}]` : `.${part}`))
    .join('')
    .replace(/^\./, '');
}
