/**
 * One call of the command line, from what was typed to what is printed.
 *
 * With `--json` exactly one JSON document goes to `out`, be it the answer or
 * the error; the error is said to people on `warn` either way.
 */
import { problemError, problemOf, type Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import type { CliOptionName } from '@shared/words/en/cli.ts';
import type { Command } from './command.ts';
import { allCommands, commandCalled } from './commands/index.ts';
import { readArgs, type Args } from './args.ts';
import { commandHelp, generalHelp } from './help.ts';
import { problemJson } from './json/problem.ts';
import { printed } from './text/on-one-line.ts';

/** Where a call prints: whole texts, without the last line's end. */
export interface Printer {
  out(text: string): void;
  warn(text: string): void;
  /** Shows a text in the place of the one before, until something is printed; empty: nothing any more. */
  passing?(text: string): void;
}

const COMMON: readonly CliOptionName[] = ['json', 'help'];

/** Runs one call and gives the exit status: 0, or 1 if there was a problem. */
export async function run(typed: readonly string[], printer: Printer): Promise<number> {
  // Looked for by hand, so that even a call that cannot be read is answered in JSON.
  const isJson = typed.includes('--json');
  try {
    const [name, ...rest] = typed[0] === '--json' ? typed.slice(1) : typed;
    if ((name === undefined && !isJson) || name === '--help' || name === '-h') {
      printer.out(generalHelp(await allCommands()));
      return 0;
    }
    const command = await commandCalled(name);
    if (!command) throw unknownCommand(name);
    const args = readArgs(rest, [...command.options, ...COMMON]);
    if (args.switches.has('help')) {
      printer.out(commandHelp(command));
      return 0;
    }
    assertNames(command, args);
    const answer = await command.run(args, (text) => printer.passing?.(text)).finally(() => printer.passing?.(''));
    printer.out(isJson ? jsonText(answer.json) : printed(answer.text()));
    return 0;
  } catch (error) {
    report(problemOf(error), isJson, printer);
    return 1;
  }
}

function unknownCommand(name: string | undefined): Error {
  return name === undefined || name.startsWith('-')
    ? problemError('argument-missing', { argument: 'COMMAND' })
    : problemError('command-unknown', { text: name });
}

/** Throws `argument-missing` or `argument-unexpected`. */
function assertNames({ argument, most = 1 }: Command, { names }: Args): void {
  if (argument !== null && names.length === 0) throw problemError('argument-missing', { argument });
  const extra = names[argument === null ? 0 : most];
  if (extra !== undefined) throw problemError('argument-unexpected', { text: extra });
}

function report(problem: Problem, isJson: boolean, printer: Printer): void {
  if (isJson) printer.out(jsonText(problemJson(problem)));
  printer.warn(printed(words.problems.sentence(problem)));
}

function jsonText(value: unknown): string {
  return JSON.stringify(value);
}
