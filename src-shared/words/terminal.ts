/** What the program says in a terminal alone: its command line and its start. The page says none of it, and is not sent it. */
import { cli } from './en/cli.ts';
import { launcher } from './en/launcher.ts';

export const terminalWords = { cli, launcher };
