import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { render } from 'svelte/server';
import { afterAll, describe, expect, it } from 'vitest';
import { projectAt, changeOf, projectFromText, projectToText, sampleProject, setPiece } from '@shared/project/index.ts';
import PieceForm from '../../../src-renderer/piece/panel/PieceForm.svelte';
import { Session } from '../../../src-renderer/session/session.ts';
import { call, callJson, Folder } from '../../unit/cli/calls.ts';

const fixtures = resolve(import.meta.dirname, '../../fixtures');
const folder = new Folder();
afterAll(() => folder.remove());

describe('for whom a piece is knitted', () => {
  const wearer = 'Aunt Vera';
  const session = new Session(sampleProject(), true);
  session.change(changeOf('piece-details', ...setPiece(session.current, { wearer } as object)));
  const text = projectToText(session.project);

  it('is in the form, is kept by the file, and undo takes it back', () => {
    const props = { project: session.current, unit: 'cm' };
    expect(render(PieceForm, { props }).body).toMatch(/>Knitted for<[^]*value="Aunt Vera"/);
    expect(projectAt(projectFromText(text)).piece).toMatchObject({ wearer });
    session.undo();
    expect(session.current.piece).toMatchObject({ wearer: '' });
  });

  it('is told by the command line', async () => {
    const path = folder.file('sample.walewright', text);
    expect((await call('plan', path)).out).toContain(wearer);
    expect(await callJson('plan', path)).toMatchObject({ piece: { wearer } });
  });

  it.each([1, 2, 3, 4, 5, 6, 7])('is empty in a file of version %i', (version) => {
    const { piece } = projectAt(
      projectFromText(readFileSync(join(fixtures, `two-gulls-${version}.walewright`), 'utf8')),
    );
    expect(piece).toMatchObject({ wearer: '' });
  });
});
