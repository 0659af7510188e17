/** The one table of commands: what each is called, which keys it has, and that it is in the list. */
import { beforeEach, describe, expect, it } from 'vitest';
import { commandGroups, commandIds, isSingleKey, shortcutsOf, type Host, type Shortcut } from '@shared/host/index.ts';
import { sampleProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import {
  ariaKeys,
  commandsOf,
  labelWithKeys,
  shownKeys,
  type Command,
} from '../../../src-renderer/commands/command.ts';
import { singleKeys } from '../../../src-renderer/commands/single-keys.ts';
import type { Files } from '../../../src-renderer/files/files.ts';
import { KnitViewModel } from '../../../src-renderer/knit/view-model.ts';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { PieceViewModel } from '../../../src-renderer/piece/view-model.ts';
import { saveCopyAction } from '../../../src-renderer/recovery/copy.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { SheetViewModel } from '../../../src-renderer/sheet/view-model.ts';
import { windowActions } from '../../../src-renderer/window/actions.ts';

const session = new Session(sampleProject(), true);
const general = commandsOf({
  ...windowActions(session, {} as Files, {
    showCommands: () => undefined,
    showColourways: () => undefined,
    takeTour: () => undefined,
    print: async () => undefined,
    nameProject: () => undefined,
    keepSettings: () => undefined,
  }),
  // Those of the window's own start are not made here; what they are called and their keys come from the tables.
  'kept-work': { run: () => undefined },
  'save-copy': saveCopyAction(session),
});
const viewModels = {
  motif: new MotifViewModel(session),
  piece: new PieceViewModel(session),
  sheet: new SheetViewModel(session, {} as Host, {} as never),
  knit: new KnitViewModel(session, {} as Host),
};

/** As the list of commands has them while a bench is up. */
function listed(bench: keyof typeof viewModels): readonly Command[] {
  return [...Object.values<Command>(general), ...Object.values<Command>(viewModels[bench].commands)];
}
const BENCHES = Object.keys(viewModels) as readonly (keyof typeof viewModels)[];

beforeEach(() => void (singleKeys.areOn = true));

describe('every command', () => {
  it('is in the list of commands on one bench at least, by its own name', () => {
    const found = BENCHES.flatMap(listed);
    expect(new Set(found.map(({ id }) => id))).toEqual(new Set(commandIds));
    for (const bench of BENCHES) {
      const ids = listed(bench).map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
    for (const command of Object.values<Command>(general)) expect(general).toHaveProperty(command.id, command);
  });

  it('is called something, begun with a capital, and like no other on its bench', () => {
    for (const bench of BENCHES) {
      const labels = listed(bench).map((command) => command.label());
      for (const label of labels) expect(label).toMatch(/^[A-Z]\S*/);
      expect(labels.filter((label, index) => labels.indexOf(label) !== index)).toEqual([]);
    }
  });

  it('has a shortcut, and none of its shortcuts is that of another on its bench', () => {
    for (const bench of BENCHES) {
      const owners = new Map<Shortcut, string>();
      for (const { id } of listed(bench)) {
        for (const keys of shortcutsOf(id)) {
          expect(owners.get(keys), `${keys} of ${id}`).toBeUndefined();
          owners.set(keys, id);
        }
      }
    }
  });

  it('has a name that no other group has', () => {
    const ids = Object.values(commandGroups).flatMap((group) => Object.keys(group));
    expect(new Set(ids).size).toBe(ids.length);
    expect(commandIds).toEqual(ids);
  });
});

describe('what a command is called', () => {
  it('follows what it would do', () => {
    const { undo, 'length-unit': unit } = general;
    expect([undo.label(), undo.whyNot()]).toEqual(['Undo', 'There is nothing to undo.']);
    expect(unit.label()).toBe('Lengths in inches');
    session.look({ lengthUnit: 'in' });
    expect(unit.label()).toBe('Lengths in centimetres');
    session.look({ lengthUnit: 'cm' });
    expect(viewModels.piece.commands['all-over-add'].label()).toBe(`Repeat ${session.motif.name} all over`);
  });
});

describe('a shortcut of a single key', () => {
  it('is a letter, a digit or a sign, alone or with Shift', () => {
    const single: readonly Shortcut[] = ['B', 'Shift+B', '1', '+', '<'];
    const others: readonly Shortcut[] = ['Mod+B', 'Mod+Shift+B', 'F2', 'Enter', 'Shift+ArrowLeft', 'Shift+Delete'];
    expect(single.filter((keys) => !isSingleKey(keys))).toEqual([]);
    expect(others.filter(isSingleKey)).toEqual([]);
  });

  it('is neither shown nor named where it is switched off, and other shortcuts stay', () => {
    const { lift, 'select-up': up } = viewModels.motif.commands;
    expect([labelWithKeys(lift), ariaKeys(lift)]).toEqual([`${words.commands.lift} (M)`, 'M']);
    singleKeys.areOn = false;
    expect([labelWithKeys(lift), ariaKeys(lift)]).toEqual([words.commands.lift, undefined]);
    expect(labelWithKeys(up)).toBe(`${words.commands['select-up']} (Shift+↑)`);
    expect(shownKeys('save')).toBe('Ctrl+S');
  });

  it('is not promised by what is announced where it is switched off', () => {
    const said = (): string => session.announced;
    viewModels.motif.commands['select-all'].run();
    expect(said()).toMatch(/\. M moves it, Escape lets it go\.$/);
    viewModels.motif.commands['tool-trace'].run();
    expect(said()).toBe('There is no picture to trace yet. Shift+Q adds one.');
    singleKeys.areOn = false;
    viewModels.motif.commands['select-all'].run();
    expect(said()).toMatch(/rows\. Escape lets it go\.$/);
    viewModels.motif.commands['tool-trace'].run();
    expect(said()).toBe('There is no picture to trace yet.');
  });
});
