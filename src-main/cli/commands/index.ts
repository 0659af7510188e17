/** The commands, in the order of the help. Each is loaded when it is asked for: what it works with takes a while. */
import type { CliCommandName } from '@shared/words/en/cli.ts';
import type { Command } from '../command.ts';

const LOADED: { readonly [Name in CliCommandName]: () => Promise<Command> } = {
  measure: async () => (await import('./measure.ts')).measureCommand,
  read: async () => (await import('./read.ts')).readCommand,
  place: async () => (await import('./place.ts')).placeCommand,
  plan: async () => (await import('./plan.ts')).planCommand,
  follow: async () => (await import('./follow.ts')).followCommand,
  sizes: async () => (await import('./sizes.ts')).sizesCommand,
  export: async () => (await import('./export.ts')).exportCommand,
  collection: async () => (await import('./collection.ts')).collectionCommand,
  keep: async () => (await import('./keep.ts')).keepCommand,
  demo: async () => (await import('./demo.ts')).demoCommand,
};

/** The command of that name; null where there is none. */
export async function commandCalled(name: string | undefined): Promise<Command | null> {
  return name !== undefined && Object.hasOwn(LOADED, name) ? LOADED[name as CliCommandName]() : null;
}

/** All of them, for the help. */
export function allCommands(): Promise<Command[]> {
  return Promise.all(Object.values(LOADED).map((load) => load()));
}
