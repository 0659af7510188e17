/** What can be wrong with a project, its file, its motifs and its sizes. */
import type { PatternName } from '../pattern/index.ts';
import type { Fault } from '../schema/index.ts';

export interface ProjectProblems {
  'project-not-json': { detail: string };
  'project-newer': { version: number; known: number };
  /** `path` as a person counts: `motifs[1].rows[2]`; empty for the whole file. */
  'project-invalid': { path: string; fault: Fault };
  'project-not-ours': Record<string, never>;
  /** Saved as it is, the file could not be opened again. `path` and `fault` as in `project-invalid`. */
  'project-not-savable': { path: string; fault: Fault };
  'motif-missing': { motif: string };
  /** `piece`: the name of theirs where there are several. */
  'motif-in-use': { motif: string; piece: string | null; patterns: readonly PatternName[] };
  'motif-last': Record<string, never>;
  'motifs-too-many': { most: number };
  'yarns-too-many-in-motif': { motif: string; yarns: number; most: number };
  'sizes-too-many': { most: number };
  'size-last': Record<string, never>;
  'size-name-unusable': { text: string; most: number };
  'size-name-taken': { name: string };
  'colourways-too-many': { most: number };
  'colourway-last': Record<string, never>;
  'colourway-name-unusable': { text: string; most: number };
  'colourway-name-taken': { name: string };
  'colourway-unknown': { given: string; known: readonly string[] };
  'size-unknown': { given: string; known: readonly string[] };
  'piece-unknown': { given: string; known: readonly string[] };
  /** Another piece is called so. */
  'piece-name-taken': { name: string };
  /** `places` of the pieces that are called so, from 1. */
  'piece-name-shared': { name: string; places: readonly number[] };
  'pieces-too-many': { most: number };
  'underlays-too-large': { mostMegabytes: number };
}
