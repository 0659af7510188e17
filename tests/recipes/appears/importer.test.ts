import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { sampleProject } from '@shared/project/index.ts';
import type { DecodedPicture } from '../../../src-renderer/pictures/decode.ts';
import { givenPicture } from '../../../src-renderer/pictures/given.ts';
import { IMPORTERS } from '../../../src-renderer/reading-in/importers.ts';
import WhatIsOnIt from '../../../src-renderer/reading-in/WhatIsOnIt.svelte';
import { Session } from '../../../src-renderer/session/session.ts';

describe('a silhouette', () => {
  const given = givenPicture(new TextEncoder().encode('P1\n2 1\n1 0\n') as Uint8Array<ArrayBuffer>, 'small.pbm');
  const rgba = Uint8Array.of(0, 0, 0, 255, 255, 255, 255, 255);
  const picture: DecodedPicture = { width: 2, height: 1, rgba, kind: 'PBM', shown: {} as ImageBitmap, small: null };
  const nothing = (): void => undefined;

  it('is offered where somebody is asked what is on a picture', () => {
    const importers = IMPORTERS.filter((importer) => importer.fits(given));
    const { body } = render(WhatIsOnIt, {
      props: { picture, name: 'small.pbm', importers, onchoose: nothing, onclose: nothing },
    });
    expect(body).toContain('<strong>A silhouette</strong>');
  });

  it('has a dialog that takes it', async () => {
    const importer = IMPORTERS.find(({ name }) => (name as string) === 'silhouette');
    const dialog = await importer?.dialog?.();
    if (!dialog) throw new Error('The importer has no dialog');
    const { project, motif, piece } = new Session(sampleProject(), true);
    const given = { project, motif, gauge: piece.gauge, unit: 'cm', picture, title: 'small' } as const;
    const props = { ...given, further: async () => null, onread: nothing, ontake: () => null, onclose: nothing };
    const { body } = render(dialog.default, { props });
    expect(body).toContain('>A silhouette</h2>');
    expect(body).not.toMatch(/<button[^>]* disabled/);
  });
});
