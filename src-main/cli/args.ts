/**
 * What a person typed after the command, split into options and names.
 *
 * Node's parser does the splitting; it is told not to judge, because its own
 * refusals ("did you forget to specify …") know nothing of stitches, and
 * because it refuses `--stitches -5` before we can say what is wrong with -5.
 */
import { parseArgs } from 'node:util';
import { problemError } from '@shared/problem/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import type { CliOptionName } from '@shared/words/en/cli.ts';

/** The options and names of one call. */
export interface Args {
  /** What follows the command, options apart. */
  readonly names: readonly string[];
  /** Text of each option that takes some; of one given twice, the last. */
  readonly values: ReadonlyMap<CliOptionName, string>;
  /** Options that take nothing, such as `--whole`. */
  readonly switches: ReadonlySet<CliOptionName>;
}

/** Splits what was typed. Throws `option-unknown`, `option-empty` or `switch-value`. */
export function readArgs(typed: readonly string[], allowed: readonly CliOptionName[]): Args {
  const { tokens } = parseArgs({
    args: [...typed],
    options: {
      ...Object.fromEntries(allowed.map((name) => [name, { type: takesText(name) ? 'string' : 'boolean' } as const])),
      help: { type: 'boolean', short: 'h' },
    },
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const names: string[] = [];
  const values = new Map<CliOptionName, string>();
  const switches = new Set<CliOptionName>();
  for (const token of tokens) {
    if (token.kind === 'positional') names.push(token.value);
    if (token.kind !== 'option') continue;
    const name = allowed.find((known) => known === token.name);
    if (name === undefined) throw problemError('option-unknown', { option: token.rawName }, token.rawName);
    if (takesText(name)) values.set(name, textOf(token.rawName, token.value, token.inlineValue));
    else if (token.value === undefined) switches.add(name);
    else throw problemError('switch-value', { option: token.rawName, text: token.value }, token.rawName);
  }
  return { names, values, switches };
}

/** True if the option is followed by a value. */
function takesText(name: CliOptionName): boolean {
  return terminalWords.cli.options[name][0] !== null;
}

/** The value; another option in its place means that it was forgotten. */
function textOf(rawName: string, value: string | undefined, isInline: boolean | undefined): string {
  const isAnotherOption = isInline !== true && value?.startsWith('--');
  if (value === undefined || isAnotherOption) throw problemError('option-empty', { option: rawName }, rawName);
  return value;
}
