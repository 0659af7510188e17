import { render } from 'svelte/server';
import { afterAll, describe, expect, it } from 'vitest';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText, sampleProject, type ProjectAt } from '@shared/project/index.ts';
import GroupsForm from '../../../src-renderer/piece/panel/GroupsForm.svelte';
import { plannedOf } from '../../../src-renderer/piece/planned.ts';
import { call, Folder } from '../../unit/cli/calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

describe('a rule of margins of twice a gap', () => {
  const motif = folder.motif('square.pbm', ['XX', 'XX']);

  it('places groups from the command line, with its reason', async () => {
    // Two groups of one stitch leave 10 of 12: a gap of 2 between margins of 4.
    const { out } = await call('place', motif, '--stitches', '12', '--copies', '1,1', '--rule', 'framed');
    expect(out).toContain('Each margin twice a gap: 4 stitches at each edge, 2 between');
  });

  it('is named where the command line is asked for help, or asked for an unknown rule', async () => {
    expect((await call('place', '--help')).out).toContain('framed');
    const { warned } = await call('place', motif, '--stitches', '12', '--copies', '1,1', '--rule', 'golden');
    expect(warned).toContain('framed');
  });

  it('is offered by the form, chosen where the band has it, and kept by the file', () => {
    const sample = projectAt(sampleProject());
    const bands = bandsOf(sample).map((band) => ({ ...band, rule: { kind: 'framed' } }));
    const project = projectAt(projectFromText(fileTextOf({ ...sample, patterns: bands } as unknown as ProjectAt)));
    const { body } = render(GroupsForm, {
      props: { project, unit: 'cm', planned: plannedOf(project), band: bandsOf(project)[0], index: 0 },
    });
    expect(body).toMatch(/<option value="framed" selected[^>]*>Framed<\/option>/);
  });
});
