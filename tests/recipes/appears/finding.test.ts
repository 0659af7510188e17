import { render } from 'svelte/server';
import { afterAll, describe, expect, it } from 'vitest';
import { partedByLeft } from '@shared/check/index.ts';
import { placementSheet, sheetFacts, sheetToSvg } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject, startBand, startGroup } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import FindingsPanel from '../../../src-renderer/piece/findings/FindingsPanel.svelte';
import { Session } from '../../../src-renderer/session/session.ts';
import { PieceViewModel } from '../../../src-renderer/piece/view-model.ts';
import { foundAhead } from '../../../src-renderer/worker/jobs/lookahead.ts';
import { call, callJson, Folder } from '../../unit/cli/calls.ts';
import { settled } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

describe('a finding of too many balls', () => {
  it('is said by the command line, in words and as a code', async () => {
    const motif = folder.motif('corner.pbm', ['X.', 'XX']);
    const plan = ['plan', motif, '--stitches', '60', '--copies', '1,1,1,1,1,1,1', '--own-balls'];
    expect((await call(...plan)).out).toContain('7 balls of contrast hang at the machine at once.');
    const { findings } = await callJson<{ findings: { code: string }[] }>(...plan);
    expect(findings.map(({ code }) => code)).toContain('many-balls');
  });

  it('is told in the panel of findings, and printed', () => {
    const sample = projectAt(sampleProject());
    const groups = Array.from({ length: 7 }, () => ({ ...startGroup('lighthouse', 1), hasOwnBall: true }));
    const project = settled({ ...sample, patterns: [{ ...startBand('lighthouse', [1]), groups }] });
    const piece = pieceIn(project);
    const plan = makePlan(piece);
    const ahead = { ...foundAhead(piece, plan), piece, plan, remedies: new Map() };
    const viewModel = new PieceViewModel(new Session(project.whole, true));
    const findings = partedByLeft(ahead.findings, piece.leftAsIs);
    const props = { project, plan, unit: 'cm' as const, viewModel, ahead, findings, onmend: () => undefined };
    expect(render(FindingsPanel, { props }).body).toContain('7 balls of contrast');
    const { pages } = placementSheet(sheetFacts(project), plan, {
      paper: 'a4',
      date: TEST_DAY,
      unit: 'cm',
    });
    expect(pages.map((page) => sheetToSvg(page)).join('')).toContain('7 balls');
  });
});
