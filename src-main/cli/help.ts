/** Help pages: one for the whole, one for each command. */
import { terminalWords } from '@shared/words/terminal.ts';
import type { CliCommandName, CliOptionName } from '@shared/words/en/cli.ts';
import type { Command } from './command.ts';
import { table, under } from './text/table.ts';

const { cli } = terminalWords;

/** What all commands have in common. */
export function generalHelp(commands: readonly Command[]): string {
  const lines = table(commands, [
    { title: '', cell: usage },
    { title: '', cell: ({ name }) => cli.commands[name] },
  ]).slice(1);
  return [cli.help.title, cli.help.usage('COMMAND'), under(cli.help.commandsTitle, lines), cli.help.more].join('\n\n');
}

export function commandHelp(command: Command): string {
  const { name, argument } = command;
  const argumentLines = argument === null ? [] : [under(argument, [cli.arguments[argument]])];
  const notes = cli.notes[name];
  return [
    cli.commands[name],
    cli.help.usage(usage(command)),
    ...argumentLines,
    under(cli.help.optionsTitle, optionLines([...command.options, 'json', 'help'], name)),
    ...(notes ? [under(cli.help.noteTitle, notes)] : []),
  ].join('\n\n');
}

/** `place MOTIF --stitches N --copies N,N,… [options]` */
function usage({ name, argument, required, options }: Command): string {
  const isRest = options.length > required.length;
  return [name, argument ?? '', ...required.map((option) => written(option, name)), isRest ? '[options]' : '']
    .filter((part) => part !== '')
    .join(' ');
}

function optionLines(names: readonly CliOptionName[], command: CliCommandName): string[] {
  return table(names, [
    { title: '', cell: (name) => written(name, command) },
    { title: '', cell: (name) => optionOf(name, command)[1] },
  ]).slice(1);
}

/** What an option takes and says, as the command means it. */
function optionOf(name: CliOptionName, command: CliCommandName): readonly [takes: string | null, says: string] {
  return cli.optionsOf[command]?.[name] ?? cli.options[name];
}

/** `--stitches N` */
function written(name: CliOptionName, command: CliCommandName): string {
  const takes = optionOf(name, command)[0];
  return takes === null ? `--${name}` : `--${name} ${takes}`;
}
