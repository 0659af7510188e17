/** Commands of the window itself: files, undo, benches, appearance. */
import type { Params } from '@shared/host/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { words } from '@shared/words/index.ts';
import type { Files } from '../files/files.ts';
import type { Bench, Session } from '../session/session.ts';
import type { Action } from '../commands/action.ts';
import { singleKeys } from '../commands/single-keys.ts';

const always = (): boolean => true;

export const BENCHES: readonly Bench[] = ['motif', 'piece', 'sheet'];

const THEME_KEYS = { light: 'Mod+Shift+L', dark: 'Mod+Shift+D', system: 'Mod+Shift+Y' } as const;

/** What the window does for commands. */
export interface WindowControls {
  showCommands(): void;
  print(): Promise<void>;
  /** Lets the name of the project be typed. */
  nameProject(): void;
  /** Keeps what a person set, for this and later runs. */
  keepSettings(set: Params<'settings.keep'>): void;
}

export function windowActions(
  session: Session,
  files: Files,
  { showCommands, print, nameProject, keepSettings }: WindowControls,
): Action[] {
  const text = words.shell.commands;
  const otherUnit = (): LengthUnit => (session.view.lengthUnit === 'cm' ? 'in' : 'cm');
  return [
    { id: 'new', label: () => text.new, keys: ['Mod+Shift+N'], isEnabled: always, run: () => files.start() },
    { id: 'open', label: () => text.open, keys: ['Mod+O'], isEnabled: always, run: () => files.open() },
    {
      id: 'read-photo',
      label: () => words.readingIn.chart.command,
      keys: ['Mod+Shift+G'],
      isEnabled: always,
      run: () => files.readPicture('chart'),
    },
    {
      id: 'open-sample',
      label: () => text.openSample,
      keys: ['Mod+Shift+O'],
      isEnabled: always,
      run: () => files.openSample(),
    },
    {
      id: 'read-picture',
      label: () => words.fromPicture.command,
      keys: ['Mod+Shift+P'],
      isEnabled: always,
      run: () => files.readPicture('picture'),
    },
    {
      id: 'save',
      label: () => text.save,
      keys: ['Mod+S'],
      isEnabled: always,
      run: async () => void (await files.save()),
    },
    {
      id: 'save-as',
      label: () => text.saveAs,
      keys: ['Mod+Shift+S'],
      isEnabled: always,
      run: async () => void (await files.saveAs()),
    },
    { id: 'rename-project', label: () => text.renameProject, keys: ['F2'], isEnabled: always, run: nameProject },
    {
      id: 'print',
      label: () => text.print,
      keys: ['Mod+P'],
      isEnabled: always,
      run: (isHeld) => (isHeld === true ? undefined : print()),
    },
    {
      id: 'undo',
      label: () => words.changes.undo(session.undoName),
      keys: ['Mod+Z'],
      isEnabled: () => session.undoName !== null,
      run: () => {
        const undone = session.undoName;
        session.undo();
        if (undone) session.announce(words.changes.undone(undone));
      },
    },
    {
      id: 'redo',
      label: () => words.changes.redo(session.redoName),
      keys: ['Mod+Shift+Z', 'Mod+Y'],
      isEnabled: () => session.redoName !== null,
      run: () => {
        const redone = session.redoName;
        session.redo();
        if (redone) session.announce(words.changes.redone(redone));
      },
    },
    ...BENCHES.map((bench, index): Action => ({
      id: `bench-${bench}`,
      label: () => text.goTo(words.shell.benches[bench]),
      keys: [String(index + 1)],
      isEnabled: always,
      isOn: () => session.view.bench === bench,
      run: () => {
        session.look({ bench });
        session.announce(words.shell.benches[bench]);
      },
    })),
    {
      id: 'length-unit',
      label: () => text.lengthUnit[otherUnit()],
      keys: ['Mod+I'],
      isEnabled: always,
      run: () => {
        const lengthUnit = otherUnit();
        session.look({ lengthUnit });
        session.announce(text.lengthUnitAnnounced[lengthUnit]);
      },
    },
    {
      id: 'single-keys',
      label: () => text.singleKeys,
      keys: ['Mod+Shift+K'],
      isEnabled: always,
      isOn: () => singleKeys.areOn,
      run: () => {
        singleKeys.areOn = !singleKeys.areOn;
        keepSettings({ singleKeys: singleKeys.areOn });
      },
    },
    { id: 'commands', label: () => text.commands, keys: ['Mod+K'], isEnabled: always, run: showCommands },
    ...(['light', 'dark', 'system'] as const).map((theme): Action => ({
      id: `theme-${theme}`,
      label: () => text.theme[theme],
      keys: [THEME_KEYS[theme]],
      isEnabled: always,
      isOn: () => session.view.theme === theme,
      run: () => {
        session.look({ theme });
        session.announce(text.theme[theme]);
      },
    })),
  ];
}
