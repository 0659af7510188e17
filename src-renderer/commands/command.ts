/**
 * Everything the program can do, as values.
 *
 * A command is a line of the one table (`host/commands.ts`) with what it does.
 * It feeds buttons, the list of commands, the platform's menu and the shortcut
 * alike, so it cannot be enabled in one place and greyed in another.
 */
import { isSingleKey, shortcutsOf, type CommandGroup, type CommandId, type CommandOf } from '@shared/host/index.ts';
import type { Shortcut } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';
import { ariaOf, keysShown } from './shortcut.ts';
import { singleKeys } from './single-keys.ts';

/** What a command does; how it is called and which keys it has is in the tables. */
export type Action<Id extends CommandId = CommandId> = Deed & LabelOf<(typeof words.commands)[Id]>;

interface Deed {
  /** Why it cannot be run now, as a sentence, or null if it can; it always can, if this is left out. */
  readonly whyNot?: () => string | null;
  /** For switches: whether it is on. */
  readonly isOn?: () => boolean;
  /** `isHeld`: the key that ran it before is held down, and runs it again. */
  readonly run: (isHeld?: boolean) => void | Promise<void>;
}

/** One that is called differently from time to time says how it is called now. */
type LabelOf<Label> = [Label] extends [string]
  ? { readonly label?: never }
  : [Extract<Label, string>] extends [never]
    ? { readonly label: () => string }
    : { readonly label?: () => string };

/** What each of these commands does: none may be missing, and none may be there besides. */
export type ActionsOf<Group extends CommandGroup> = Actions<Extract<CommandOf<Group>, CommandId>>;
export type Actions<Id extends CommandId> = { readonly [Each in Id]: Action<Each> };

export interface Command {
  readonly id: CommandId;
  /** As it is said now: `Undo draw`. */
  readonly label: () => string;
  /** Why it cannot be run now, as a sentence; null if it can. */
  readonly whyNot: () => string | null;
  readonly isOn?: () => boolean;
  readonly run: Deed['run'];
}

/** Commands by their ids; a button is given them, and names one. */
export type Commands<Id extends CommandId> = { readonly [Each in Id]: Command };

const always = (): null => null;

/** For {@link Deed.whyNot}: nothing stands in the way where `can` is true. */
export function unless(can: () => boolean, why: string): () => string | null {
  return () => (can() ? null : why);
}

/** The commands that do this, in the order in which they stand here. */
export function commandsOf<Id extends CommandId>(actions: Actions<Id>): Commands<Id> {
  const entries = Object.entries<Deed & { readonly label?: () => string }>(actions).map(([name, action]) => {
    const id = name as CommandId;
    const label = action.label ?? ((): string => words.commands[id] as string);
    const command: Command = { whyNot: always, ...action, id, label };
    return [id, command];
  });
  return Object.fromEntries(entries) as Commands<Id>;
}

/** Actions that are alike, one for each name: `idOf` says which command it is. */
export function actionsFor<Name extends string, Id extends CommandId>(
  names: readonly Name[],
  idOf: (name: Name) => Id,
  actionOf: (name: Name) => Deed,
): { readonly [Each in Id]: Deed & { readonly label?: never } } {
  return Object.fromEntries(names.map((name) => [idOf(name), actionOf(name)])) as ReturnType<
    typeof actionsFor<Name, Id>
  >;
}

/** What a button is given: commands, and the name of the one among them that it is for. */
export interface ForCommand<Id extends CommandId> {
  readonly commands: Commands<Id>;
  readonly command: Id;
}

/** The shortcuts of a command that act now. */
export function liveKeys(id: CommandId): readonly Shortcut[] {
  const keys = shortcutsOf(id);
  return singleKeys.areOn ? keys : keys.filter((each) => !isSingleKey(each));
}

/** The first shortcut of a command that acts now, as people write it; undefined if there is none. */
export function shownKeys(id: CommandId): string | undefined {
  const [keys] = liveKeys(id);
  return keys && keysShown(keys);
}

/** What a command is called, with its first shortcut; for tooltips. */
export function labelWithKeys(command: Command): string {
  const keys = shownKeys(command.id);
  return keys === undefined ? command.label() : `${command.label()} (${keys})`;
}

/** The same, and on a line of its own why the command cannot be used now. */
export function tooltipOf(command: Command): string {
  const why = command.whyNot();
  return why === null ? labelWithKeys(command) : `${labelWithKeys(command)}\n${why}`;
}

/** The first shortcut that acts now, as `aria-keyshortcuts` wants it. */
export function ariaKeys(command: Command): string | undefined {
  const [keys] = liveKeys(command.id);
  return keys && ariaOf(keys);
}
