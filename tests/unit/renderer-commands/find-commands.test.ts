/** Commands found by what people call them. */
import { describe, expect, it } from 'vitest';
import { commandIds, type CommandId } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';
import { synonyms } from '@shared/words/synonyms.ts';
import type { Command } from '../../../src-renderer/commands/command.ts';
import { findCommands } from '../../../src-renderer/commands/find-commands.ts';

const named = (id: CommandId): string => {
  const label = words.commands[id];
  return typeof label === 'string' ? label : id;
};
const commands: readonly Command[] = commandIds.map((id) => ({
  id,
  label: () => named(id),
  whyNot: () => null,
  run: () => undefined,
}));
const found = (typed: string): readonly CommandId[] => findCommands(commands, typed, synonyms).map(({ id }) => id);

describe('a command is found by the name that people know it by', () => {
  it.each<[string, readonly CommandId[]]>([
    ['flip', ['mirror-across', 'mirror-up']],
    ['mirror', ['mirror-across', 'mirror-up']],
    ['rotate', ['quarter-turn']],
    ['clear', ['select-clear']],
    ['colour', ['yarn-next', 'yarn-before', 'yarn-add', 'select-colour']],
    ['color', ['yarn-next', 'yarn-before', 'yarn-add', 'select-colour']],
    ['resize', ['insert-column', 'delete-column', 'insert-row', 'delete-row', 'trim-blank']],
    ['replace', ['exchange-yarns']],
    ['export', ['write-chart-png', 'write-chart-svg', 'write-sheet-pdf', 'write-rows-csv', 'write-all']],
    ['print', ['print']],
    ['name', ['rename-project']],
    ['help', ['commands']],
    ['select all', ['select-all']],
    ['all', ['select-all', 'commands']],
    ['delete', ['select-clear', 'delete-column', 'delete-row', 'motif-delete', 'piece-remove']],
    ['text', ['lettering']],
    ['grid', ['square-cells', 'neighbours', 'insert-column', 'bench-motif']],
    ['hem', ['bench-piece', 'add-section']],
    ['gauge', ['bench-piece', 'square-cells']],
    ['width', ['bench-piece', 'insert-column', 'delete-column']],
    ['cast on', ['bench-piece']],
    ['swatch', ['bench-piece']],
    ['machine', ['bench-piece']],
    ['needles', ['bench-piece', 'keep-needles']],
    ['hat', ['bench-piece']],
    ['margin', ['group-left', 'group-right', 'bench-piece']],
    ['half drop', ['copies-follow']],
    ['settings', ['length-unit', 'single-keys', 'theme-dark']],
    ['history', ['undo', 'redo']],
    ['instructions', ['bench-sheet']],
    ['warnings', ['finding-next', 'finding-before']],
    ['autosave', ['kept-work']],
    ['recent', ['open']],
  ])('%s', (typed, wanted) => {
    expect(found(typed)).toEqual(expect.arrayContaining([...wanted]));
  });

  it('with its own name before the others', () => {
    expect(found('print')[0]).toBe('print');
    expect(found('cut')[0]).toBe('cut');
    expect(found('select all')[0]).toBe('select-all');
  });

  it('by its own name alone while the others have not come', () => {
    const named = findCommands(commands, 'mirror', {});
    expect(named.map(({ id }) => id)).toEqual([]);
    expect(findCommands(commands, 'flip', {})).toHaveLength(2);
  });

  it('whichever case and order the words have', () => {
    expect(found('  ALL select ')).toEqual(found('select all'));
  });
});

it('lists all commands as they stand while nothing is typed, and none for what nobody calls one', () => {
  expect(found(' ')).toEqual(commandIds);
  expect(found('qwerty')).toEqual([]);
});
