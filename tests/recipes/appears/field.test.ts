import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { render } from 'svelte/server';
import { afterAll, describe, expect, it } from 'vitest';
import { changeOf, projectFromText, projectToText, sampleProject, setPiece } from '@shared/project/index.ts';
import PieceForm from '../../../src-renderer/piece/panel/PieceForm.svelte';
import { Session } from '../../../src-renderer/session/session.ts';
import { call, callJson, Folder } from '../../unit/cli/calls.ts';

const fixtures = resolve(import.meta.dirname, '../../fixtures');
const folder = new Folder();
afterAll(() => folder.remove());

describe('notes on a piece', () => {
  const notes = 'Cuff last.';
  const session = new Session(sampleProject(), true);
  session.change(changeOf('piece-details', setPiece({ notes } as object)));
  const text = projectToText(session.project);

  it('are in the form, are kept by the file, and undo takes them back', () => {
    expect(render(PieceForm, { props: { session } }).body).toMatch(/>Notes<[^]*value="Cuff last\."/);
    expect(projectFromText(text).piece).toMatchObject({ notes });
    session.undo();
    expect(session.project.piece).toMatchObject({ notes: '' });
  });

  it('are told by the command line', async () => {
    const path = folder.file('sample.walewright', text);
    expect((await call('plan', path)).out).toContain(notes);
    expect(await callJson('plan', path)).toMatchObject({ piece: { notes } });
  });

  it.each([1, 2, 3])('are empty in a file of version %i', (version) => {
    const { piece } = projectFromText(readFileSync(join(fixtures, `two-gulls-${version}.walewright`), 'utf8'));
    expect(piece).toMatchObject({ notes: '' });
  });
});
