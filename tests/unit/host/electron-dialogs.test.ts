/** The platform's file dialogs: what they offer, and where they open. */
import { beforeEach, describe, expect, it, vi } from 'vitest';

const asked = vi.hoisted(() => ({
  options: [] as { defaultPath?: string; filters?: { name: string }[] }[],
  answer: '',
}));
vi.mock('electron', () => ({
  dialog: {
    showOpenDialog: async (options: object) => {
      asked.options.push(options);
      return { canceled: asked.answer === '', filePaths: asked.answer === '' ? [] : [asked.answer] };
    },
    showSaveDialog: async (options: object) => {
      asked.options.push(options);
      return { canceled: asked.answer === '', filePath: asked.answer };
    },
  },
}));
const { platformDialogs } = await import('../../../src-main/electron/dialogs.ts');

describe("the platform's file dialogs", () => {
  let dialogs: ReturnType<typeof platformDialogs>;
  beforeEach(() => {
    asked.options = [];
    asked.answer = '';
    dialogs = platformDialogs(() => null);
  });
  const opened = (): (string | undefined)[] => asked.options.map(({ defaultPath }) => defaultPath);

  it('offer pictures alone where a picture is wanted', async () => {
    await dialogs.openFile('any');
    await dialogs.openFile('picture');
    expect(asked.options.map(({ filters }) => filters?.map(({ name }) => name))).toEqual([
      ['Projects and pictures', 'Walewright projects', 'Pictures'],
      ['Pictures'],
    ]);
  });

  it('open where the last one for the same was answered', async () => {
    await dialogs.openFile('any');
    asked.answer = '/knitting/sleeve.walewright';
    await dialogs.openFile('any');
    asked.answer = '/photos/chart.jpg';
    await dialogs.openFile('picture');
    asked.answer = '/out';
    await dialogs.chooseFolder();
    // Given up: it stays as it was.
    asked.answer = '';
    await dialogs.openFile('any');
    await dialogs.openFile('picture');
    await dialogs.chooseFolder();
    await dialogs.saveFile('cuff.walewright');
    expect(opened()).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      '/knitting',
      '/photos',
      '/out',
      '/knitting/cuff.walewright',
    ]);
  });
});
