import { render } from 'svelte/server';
import { describe, expect, it, vi } from 'vitest';
import { cellAt } from '@shared/grid/index.ts';
import { sampleProject } from '@shared/project/index.ts';
import type { Action } from '../../../src-renderer/commands/action.ts';
import MotifBench from '../../../src-renderer/motif/MotifBench.svelte';
import { ToolController } from '../../../src-renderer/motif/stage/tool-controller.ts';
import { MotifViewModel } from '../../../src-renderer/motif/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';

// The chart itself needs a canvas; the tool lies beside it.
vi.mock('../../../src-renderer/motif/stage/MotifStage.svelte', () => ({ default: () => undefined }));

describe('a tool that draws diamonds', () => {
  const session = new Session(sampleProject(), true);
  const viewModel = new MotifViewModel(session);
  const action = viewModel.actions.find(({ id }) => id === 'tool-diamond') as Action;

  it('lies on the bench, and in the list of commands with a key that no other command has', () => {
    const { body } = render(MotifBench, { props: { session, viewModel } });
    expect(body).toMatch(/<button[^>]*aria-label="Draw a diamond"/);
    expect(action.label()).toBe('Draw a diamond');
    expect(viewModel.actions.filter(({ keys }) => keys.some((key) => action.keys.includes(key)))).toEqual([action]);
  });

  it('draws between two corners, in one step of undo, filled where that is asked for', () => {
    void action.run();
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
