/** Writing what a project turns into. */
import { mkdir } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { Day } from '@shared/day/index.ts';
import { exportKinds } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import type { ChartSides, PaperSize } from '@shared/output/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { LOOKED_AT, type ProjectAt, type Scope } from '@shared/project/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { failureCode, writingProblem } from '../services/files/index.ts';
import type { Args } from './args.ts';
import { dateOf } from './date-option.ts';
import { writeOwnFiles, type Source } from './own-files.ts';
import { assertNoneThere, writeNamed, type WrittenFile } from './replacing.ts';
import { charts as chartSides, paper as paperSize, unit, value } from './values.ts';

export interface Output {
  /** Made if need be. */
  readonly folder: string;
  readonly paper: PaperSize;
  readonly lengthUnit: LengthUnit;
  readonly charts: ChartSides;
  readonly date: Day;
  /** The piece and the size that are looked at alone if left out. */
  readonly scope?: Scope;
  /** Told how far it is. */
  readonly passing: (text: string) => void;
  /** True if what is there may be replaced. */
  readonly replaces: boolean;
  /** What the files are made from, where those that an earlier call made from it may be replaced without asking; else null. */
  readonly own: Source | null;
}

/** What the options of a call say of what it writes. Throws what their values throw. */
export function outputOptions(args: Args): Pick<Output, 'paper' | 'lengthUnit' | 'charts' | 'date' | 'replaces'> {
  return {
    paper: value(args, 'paper', paperSize) ?? 'a4',
    lengthUnit: value(args, 'unit', unit) ?? 'cm',
    charts: value(args, 'charts', chartSides) ?? 'both',
    date: dateOf(args),
    replaces: args.switches.has('replace'),
  };
}

/**
 * Writes every kind of file that a project turns into, each whole or not at
 * all. Throws what planning, `writeNamed` and `writeOwnFiles` throw.
 */
export async function writeFiles(
  project: ProjectAt,
  { folder, scope = LOOKED_AT, passing, paper, lengthUnit, charts, date, replaces, own }: Output,
): Promise<readonly WrittenFile[]> {
  const into = resolve(folder);
  await makeFolder(into);
  // Fonts and the PDF writer take a while to load; the other commands do not wait for them.
  const { exportFileNames, makeExports } = await import('../services/export/index.ts');
  // Making them takes a while as well; what stands in the way is told before.
  const names = exportFileNames(project, exportKinds, scope);
  if (own === null && !replaces) await assertNoneThere(into, names);
  const files = await makeExports({ project, kinds: exportKinds, scope, paper, lengthUnit, charts, date }, (made) =>
    passing(terminalWords.cli.files.making(made, names.length)),
  );
  return own === null ? writeNamed(into, files, replaces) : writeOwnFiles(into, own, files, replaces);
}

/** A line for each file, under a heading. */
export function filesText(files: readonly WrittenFile[], folder: string): string {
  const lines = files.map(({ path, replaced }) => `  ${terminalWords.cli.files.file(basename(path), replaced)}`);
  return [terminalWords.cli.files.written(files.length, resolve(folder)), ...lines].join('\n');
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    if (failureCode(error) === 'EEXIST') {
      throw problemError('folder-not-writable', { detail: `${basename(folder)} is not a folder` }, folder);
    }
    throw writingProblem(error, folder);
  }
}
