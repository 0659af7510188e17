/** Reading the file that a command is about: a picture of a motif, or a project. */
import { basename, extname } from 'node:path';
import { parseColour, projectFromPicture } from '@shared/picture/index.ts';
import { at, problemError } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { projectFromText, type Project, type ProjectAt, type Yarn } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { nodeFiles, readWhole } from '../services/files/index.ts';
import { readMotifSafely } from '../services/pictures/index.ts';
import { namedFile } from './own-collection.ts';
import { placed } from './placed.ts';

/** A motif, and the project that it stands in or that was made around it. */
export interface NamedMotif {
  /** The project's first motif. */
  readonly motif: Motif;
  /** With the ground that was asked for. */
  readonly project: Project;
  /** True where the file is a project, whose piece and placing are the person's own. */
  readonly isProject: boolean;
}

/** A motif, and its project looked at from one piece in one size. */
export interface NamedAt extends Omit<NamedMotif, 'project'> {
  readonly project: ProjectAt;
}

/**
 * Reads a MOTIF; `ground` is a colour or the name of a yarn to take as the
 * ground. Problems name the file, or `--ground`.
 */
export async function readMotif(given: string, ground?: string): Promise<NamedMotif> {
  const path = await namedFile(given);
  const bytes = await readWhole(nodeFiles, path);
  return isProjectFile(path, bytes) ? fromProject(path, bytes, ground) : fromPicture(path, bytes, ground);
}

/** Reads a PROJECT; problems name the file. */
export async function readProject(given: string): Promise<Project> {
  const path = await namedFile(given);
  const bytes = await readWhole(nodeFiles, path);
  if (!isProjectFile(path, bytes)) throw problemError('project-not-ours', {}, path);
  return placed(path, () => projectFromText(textOf(bytes)));
}

/** By its name, or by the brace that a project begins with. */
function isProjectFile(path: string, bytes: Uint8Array): boolean {
  const name = extname(path).toLowerCase();
  if (name === '.walewright' || name === '.json') return true;
  return textOf(bytes.subarray(0, 64)).trimStart().startsWith('{');
}

function fromProject(path: string, bytes: Uint8Array, ground?: string): NamedMotif {
  const own = placed(path, () => projectFromText(textOf(bytes)));
  const project = ground === undefined ? own : { ...own, mainYarn: yarnCalled(ground, own.yarns) };
  return { motif: project.motifs[0] as Motif, project, isProject: true };
}

async function fromPicture(path: string, bytes: Uint8Array, ground?: string): Promise<NamedMotif> {
  const read = (where: string, groundColour?: string) =>
    readMotifSafely(bytes, groundColour === undefined ? {} : { groundColour }).catch((thrown: unknown) => {
      throw at(where, thrown);
    });
  const picture = await read(path);
  const name = basename(path, extname(path)) || basename(path);
  const named = ground === undefined ? picture : await read('--ground', ground);
  const project = projectFromPicture(named, { project: name, motif: name, yarn: words.pictures.yarn });
  return { motif: project.motifs[0] as Motif, project, isProject: false };
}

/** Palette index of the yarn of that colour or name. Throws `colour-unknown`. */
function yarnCalled(text: string, yarns: readonly Yarn[]): number {
  const colour = parseColour(text);
  const index = yarns.findIndex((yarn) => yarn.colour === colour || yarn.name === text.trim());
  if (index < 0) {
    const known = yarns.map((yarn) => `${yarn.colour} (${yarn.name})`).join(', ');
    throw problemError('colour-unknown', { text, known }, '--ground');
  }
  return index;
}

function textOf(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}
