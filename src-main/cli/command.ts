/** What a command of the command line is. */
import type { CliArgumentName, CliCommandName, CliOptionName } from '@shared/words/en/cli.ts';
import type { Args } from './args.ts';

/** A command's answer: one value for programs, and text for people, made only if asked for. */
export interface Answer {
  readonly json: unknown;
  readonly text: () => string;
}

export interface Command {
  readonly name: CliCommandName;
  /** What must be named after the command, or null. */
  readonly argument: CliArgumentName | null;
  /** How many of them may be named; one where it is left out. */
  readonly most?: number;
  /** Besides `--json` and `--help`, in the order of the help. */
  readonly options: readonly CliOptionName[];
  /** Options that cannot be left out. */
  readonly required: readonly CliOptionName[];
  /** `passing` shows how far it is, for as long as it goes on. Throws `ProblemError` for what a person should be told. */
  run(args: Args, passing: (text: string) => void): Promise<Answer>;
}
