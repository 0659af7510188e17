/** What the program says otherwise of a project than it did when the record was written. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { binary, root } from '../runner/programs.ts';
import { RECORD_PATH } from './record.ts';

/** More lines are not read by anybody; the first say where to look. */
const SHOWN = 80;

/** The commit that wrote the record, whose program says what was recorded. */
function commitOfRecord(): string {
  return git(['log', '-1', '--format=%H', '--', RECORD_PATH]).trim();
}

function git(args: readonly string[], env: Readonly<Record<string, string>> = {}): string {
  return execFileSync('git', args, { cwd: root, env: { ...process.env, ...env }, encoding: 'utf8' });
}

function say(tree: string, asked: readonly string[]): string {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [binary('tsx'), join('tests', 'digests', 'say.ts'), ...asked],
    { cwd: tree, encoding: 'utf8', maxBuffer: 1e9 },
  );
  return status === 0 ? stdout : stderr;
}

/** The lines that differ. `asked`: what `say.ts` takes. */
export function whatDiffers(asked: readonly string[]): string {
  const scratch = mkdtempSync(join(tmpdir(), 'walewright-digests-'));
  try {
    const before = join(scratch, 'before');
    const index = { GIT_INDEX_FILE: join(scratch, 'index') };
    const commit = commitOfRecord();
    git(['read-tree', commit], index);
    git(['checkout-index', '--all', `--prefix=${before}/`], index);
    symlinkSync(join(root, 'node_modules'), join(before, 'node_modules'), 'junction');
    writeFileSync(join(scratch, 'recorded'), say(before, asked));
    writeFileSync(join(scratch, 'now'), say(root, asked));
    const { stdout } = spawnSync('git', ['diff', '--no-index', '--unified=1', 'recorded', 'now'], {
      cwd: scratch,
      encoding: 'utf8',
    });
    const lines = stdout.trimEnd().split('\n');
    const left = lines.length - SHOWN;
    return [
      `Recorded by ${commit.slice(0, 10)}:`,
      ...lines.slice(0, SHOWN),
      ...(left > 0 ? [`… ${left} lines more`] : []),
    ].join('\n');
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
