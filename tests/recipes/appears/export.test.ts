import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { render } from 'svelte/server';
import { afterAll, describe, expect, it } from 'vitest';
import type { CommandId, Host } from '@shared/host/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { shownKeys, type Command } from '../../../src-renderer/commands/command.ts';
import { SheetViewModel } from '../../../src-renderer/sheet/view-model.ts';
import WriteFiles from '../../../src-renderer/sheet/WriteFiles.svelte';
import { kindByName } from '../../../src-main/services/file-kinds.ts';
import { call, Folder } from '../../unit/cli/calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

describe('the row list as text', () => {
  it('is written by the command line, and stands in lists of files', async () => {
    const project = folder.file('sample.walewright', projectToText(sampleProject()));
    const into = join(folder.path, 'out');
    const { status } = await call('export', project, '--to', into);
    expect(status).toBe(0);
    const name = readdirSync(into).find((file) => file.endsWith('.txt')) as string;
    expect(name).toBe('Skerry sleeve - rows.txt');
    expect(readFileSync(join(into, name), 'utf8')).toMatch(/^Row 1 · /);
    expect(kindByName(name)).toBe('other');
  });

  it('has a button, counts among all files, and has a command with its key', () => {
    const session = new Session(sampleProject(), true);
    const viewModel = new SheetViewModel(session, {} as Host, {} as never);
    const { body } = render(WriteFiles, { props: { viewModel, isPlanned: true } });
    expect(body).toContain('Row list (text)');
    expect(body).toContain('Export all five');
    const added = Object.values<Command>(viewModel.commands).find(({ id }) => (id as string) === 'write-rows-txt');
    expect(added?.label()).toBe('Export the row list as text');
    expect(shownKeys(added?.id as CommandId)).toBe('T');
  });
});
