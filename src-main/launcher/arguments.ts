/** What a person gives when starting the program. */
import { parseArgs } from 'node:util';
import { problemError } from '@shared/problem/index.ts';

export type ShellName = 'electron' | 'browser';

export interface StartArguments {
  readonly shell: ShellName | null;
  readonly file: string | null;
  readonly wantsHelp: boolean;
}

/** Throws `option-unknown`, `option-value`, `option-empty` or `argument-unexpected`. */
export function startArguments(given: readonly string[]): StartArguments {
  const { values, positionals } = parse(given);
  const { shell = null, help = false } = values;
  if (shell !== null && shell !== 'electron' && shell !== 'browser') {
    throw problemError('option-value', { option: '--shell', text: shell, allowed: 'electron or browser' });
  }
  const [file = null, ...more] = positionals;
  if (more[0] !== undefined) throw problemError('argument-unexpected', { text: more[0] });
  return { shell, file, wantsHelp: help };
}

function parse(given: readonly string[]) {
  try {
    return parseArgs({
      args: [...given],
      options: { shell: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
      allowPositionals: true,
    });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') throw problemError('option-empty', { option: '--shell' });
    const unknown = given.find((text) => text.startsWith('-') && !/^(-h|--help|--shell(=.*)?)$/.test(text));
    throw problemError('option-unknown', { option: unknown ?? given.join(' ') });
  }
}
