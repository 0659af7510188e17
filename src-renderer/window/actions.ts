/** Commands of the window itself: files, undo, benches, appearance. */
import type { Params } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { words } from '@shared/words/index.ts';
import type { Files } from '../files/files.ts';
import type { Bench, Session } from '../session/session.ts';
import { actionsFor, unless, type ActionsOf } from '../commands/command.ts';
import { singleKeys } from '../commands/single-keys.ts';

export const BENCHES = ['motif', 'piece', 'sheet', 'knit'] as const satisfies readonly Bench[];

/** What the window does for commands. */
export interface WindowControls {
  showCommands(): void;
  showColourways(): void;
  /** Begins the tour, on the sample. */
  takeTour(): void | Promise<void>;
  print(): Promise<void>;
  /** Lets the name of the project be typed. */
  nameProject(): void;
  /** Keeps what a person set, for this and later runs. */
  keepSettings(set: Params<'settings.keep'>): void;
}

export function windowActions(
  session: Session,
  files: Files,
  { showCommands, showColourways, takeTour, print, nameProject, keepSettings }: WindowControls,
): ActionsOf<'files' | 'steps' | 'benches' | 'window' | 'themes'> {
  const text = words.shell.commands;
  const otherUnit = (): LengthUnit => (session.view.lengthUnit === 'cm' ? 'in' : 'cm');
  return {
    new: { run: () => files.start() },
    open: { run: () => files.open() },
    'read-photo': { run: () => files.readPicture('chart') },
    'open-sample': { run: async () => void (await files.openSample()) },
    'read-picture': { run: () => files.readPicture('picture') },
    save: { run: async () => void (await files.save()) },
    'save-as': { run: async () => void (await files.saveAs()) },
    'rename-project': { run: nameProject },
    print: { run: (isHeld) => (isHeld === true ? undefined : print()) },
    undo: {
      label: () => words.commands.undo(session.undoName),
      whyNot: unless(() => session.undoName !== null, words.whyNot.undo),
      run: () => {
        const undone = session.undoName;
        session.undo();
        if (undone) session.announce(words.changes.undone(undone));
      },
    },
    redo: {
      label: () => words.commands.redo(session.redoName),
      whyNot: unless(() => session.redoName !== null, words.whyNot.redo),
      run: () => {
        const redone = session.redoName;
        session.redo();
        if (redone) session.announce(words.changes.redone(redone));
      },
    },
    ...actionsFor(
      BENCHES,
      (bench) => `bench-${bench}` as const,
      (bench) => ({
        isOn: () => session.view.bench === bench,
        run: () => {
          session.look({ bench });
          session.announce(words.shell.benches[bench]);
        },
      }),
    ),
    'length-unit': {
      label: () => words.commands['length-unit'](otherUnit()),
      run: () => {
        const lengthUnit = otherUnit();
        session.look({ lengthUnit });
        session.announce(text.lengthUnitAnnounced[lengthUnit]);
      },
    },
    colourways: { run: showColourways },
    'single-keys': {
      isOn: () => singleKeys.areOn,
      run: () => {
        singleKeys.areOn = !singleKeys.areOn;
        keepSettings({ singleKeys: singleKeys.areOn });
      },
    },
    tour: { run: takeTour },
    commands: { run: showCommands },
    ...actionsFor(
      ['light', 'dark', 'system'],
      (theme) => `theme-${theme}` as const,
      (theme) => ({
        isOn: () => session.view.theme === theme,
        run: () => {
          session.look({ theme });
          session.announce(words.commands[`theme-${theme}`]);
        },
      }),
    ),
  };
}
