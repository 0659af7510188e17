/**
 * Names of commands that are wrong do not compile. `npm run types` reads this
 * file: a line below that were right would be an error there, as its
 * `@ts-expect-error` would have nothing to expect.
 */
import { expect, it } from 'vitest';
import { shortcutsOf, type CommandId, type HostEvent, type Shortcut } from '@shared/host/index.ts';
import {
  actionsFor,
  commandsOf,
  type ActionsOf,
  type Commands,
  type ForCommand,
} from '../../../src-renderer/commands/command.ts';

const run = (): void => undefined;

/** As a button takes what it is for. */
const button = <Id extends CommandId>(given: ForCommand<Id>): string => given.command;

it('a wrong name does not compile, for a button, the menu, a shortcut and what a bench does', () => {
  const zoom: ActionsOf<'zoom'> = { 'zoom-in': { run }, 'zoom-out': { run } };
  const commands: Commands<'zoom-in' | 'zoom-out'> = commandsOf(zoom);
  expect(button({ commands, command: 'zoom-in' })).toBe('zoom-in');

  // @ts-expect-error there is no such command
  button({ commands, command: 'zoom-inn' });
  // @ts-expect-error it is a command, but not one of these
  button({ commands, command: 'save' });
  // @ts-expect-error there is no such command
  expect(commands['zoom-inn']).toBeUndefined();

  // @ts-expect-error one of the group is missing
  const missing: ActionsOf<'zoom'> = { 'zoom-in': { run } };
  // @ts-expect-error one is there that is not of the group
  const besides: ActionsOf<'zoom'> = { ...zoom, 'zoom-inn': { run }, save: { run } };
  // @ts-expect-error what is called differently from time to time says how it is called
  const mute: ActionsOf<'steps'> = { undo: { run }, redo: { run } };
  // @ts-expect-error what is called the same at all times does not say so once more
  const twice: ActionsOf<'zoom'> = { ...zoom, 'zoom-in': { run, label: () => 'Larger' } };
  const toolOf = (name: 'draw' | 'weave') => `tool-${name}` as const;
  // @ts-expect-error no command is called after the second name
  actionsFor(['draw', 'weave'], toolOf, () => ({ run }));
  expect([missing, besides, mute, twice]).toHaveLength(4);

  // @ts-expect-error the platform's menu asks for commands of the window alone
  const asked: HostEvent = { kind: 'command', command: 'zoom-in' };
  // @ts-expect-error modifiers have one order, and letters are capitals
  const wrongKeys: Shortcut[] = ['Shift+Mod+Z', 'Mod+z', 'Shift++'];
  expect([asked.kind, wrongKeys.length]).toEqual(['command', 3]);
  // @ts-expect-error there is no such command
  expect(shortcutsOf('zoom-inn')).toBeUndefined();
});
