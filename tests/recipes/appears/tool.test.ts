import { render } from 'svelte/server';
import { describe, expect, it, vi } from 'vitest';
import { cellAt } from '@shared/grid/index.ts';
import { sampleProject } from '@shared/project/index.ts';
import { shownKeys, type Command } from '../../../src-renderer/commands/command.ts';
import MotifBench from '../../../src-renderer/motif/MotifBench.svelte';
import { ToolController } from '../../../src-renderer/motif/stage/tool-controller.ts';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';

// The chart itself needs a canvas; the tool lies beside it.
vi.mock('../../../src-renderer/motif/stage/MotifStage.svelte', () => ({ default: () => undefined }));

describe('a tool that draws diamonds', () => {
  const session = new Session(sampleProject(), true);
  const viewModel = new MotifViewModel(session);
  const added = Object.values<Command>(viewModel.commands).find(
    ({ id }) => (id as string) === 'tool-diamond',
  ) as Command;

  it('lies on the bench, and in the list of commands with its key', () => {
    const { body } = render(MotifBench, { props: { session, viewModel } });
    expect(body).toMatch(/<button[^>]*aria-label="Draw a diamond"/);
    expect([added.label(), shownKeys(added.id)]).toEqual(['Draw a diamond', 'G']);
  });

  it('draws between two corners, in one step of undo, filled where that is asked for', () => {
    void added.run();
    viewModel.look({ isFilled: true });
    session.look({ colour: 1 });
    const controller = new ToolController(session, viewModel, () => undefined);
    const press = controller.press({ column: 1, row: 1 });
    press.over([{ column: 5, row: 5 }]);
    press.end();
    expect(cellAt(session.motif.grid, 3, 3)).toBe(1);
    expect(cellAt(session.motif.grid, 3, 1)).toBe(1);
    expect(session.undoName).toBe('diamond');
  });
});
