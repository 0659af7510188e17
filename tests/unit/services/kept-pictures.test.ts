/** Pictures of kept work, given once and named by their SHA-256 (FIPS 180-4, as Node computes it) afterwards. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import {
  applyEdits,
  editsApart,
  editsFromText,
  editsToText,
  hashesIn,
  picturesApart,
  picturesOf,
  picturesOfEdits,
  picturesPutBack,
  projectToText,
  sampleProject,
  setMotif,
  setUnderlay,
  type Edit,
  type Project,
} from '@shared/project/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { keptPictures } from '../../../src-main/services/kept-pictures.ts';
import { dispatch } from '../../../src-main/services/dispatch.ts';
import { keep, runsInEachTest, WORK } from './kept-runs.ts';

const { run, end, take } = runsInEachTest();

const picture = (letter: string): string => `data:image/png;base64,${letter.repeat(4000)}==`;
const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');
const hashed = (...pictures: readonly string[]) => new Map(pictures.map((each) => [each, hashOf(each)]));
const behind = (of: string) => ({
  picture: of,
  left: 0,
  bottom: 0,
  columns: 11,
  rows: 11,
  turn: 0,
  opacity: 0.5,
  isShown: true,
});
function withPicture(of: string, name = 'Traced'): Project {
  const [motif] = sampleProject().motifs;
  if (!motif) throw new Error('The sample has no motif');
  return applyEdits({ ...sampleProject(), name }, [setMotif(motif.id, { underlay: behind(of) })]);
}
const TRACED = withPicture(picture('A'));
const apart = (project: Project): string => projectToText(picturesApart(project, hashed(...picturesOf(project))));
const give = (services: Services, of: string, window = WORK.window) =>
  services['recovery.picture']({ window, picture: of });

describe('the text of a project', () => {
  it('has a short name for each picture, and is the same again once they are put back', () => {
    const text = apart(TRACED);
    expect(text.length).toBeLessThan(projectToText(TRACED).length - 3900);
    expect(hashesIn(text)).toEqual([hashOf(picture('A'))]);
    expect(picturesPutBack(text, () => picture('A'))).toBe(projectToText(TRACED));
    expect(() => picturesPutBack(text, () => undefined)).toThrow(RangeError);
  });

  it('has none where a person wrote what looks like one', () => {
    const name = `"picture": "apart:${hashOf('')}"`;
    expect(hashesIn(projectToText({ ...sampleProject(), name }))).toEqual([]);
    expect(hashesIn(projectToText({ ...sampleProject(), name: `apart:${hashOf('')}` }))).toEqual([]);
  });
});

describe('the text of edits', () => {
  const [motif] = TRACED.motifs as [Project['motifs'][number]];
  it.each<[string, Edit]>([
    ['comes with a motif', { kind: 'insert', list: 'motifs', at: 0, item: { ...motif, id: 'other' } }],
    ['is laid behind a motif', setMotif(motif.id, { underlay: behind(picture('A')) })],
    ['takes the place of another', setUnderlay(motif.id, { picture: picture('A') })],
  ])('has a name for a picture that %s, and is the same again', (_, edit) => {
    expect(picturesOfEdits([edit])).toEqual([picture('A')]);
    const text = editsToText(editsApart([edit], hashed(picture('A'))));
    expect(text.length).toBeLessThan(3000);
    expect(picturesPutBack(text, () => picture('A'))).toBe(editsToText([edit]));
  });

  it('is as it was where there is no picture', () => {
    const edits = [setMotif(motif.id, { underlay: null }), setUnderlay(motif.id, { left: 3 })];
    expect(editsApart(edits, hashed())).toEqual(edits);
  });
});

describe('work whose pictures are named', () => {
  it('is kept once they are there, whole, so that the next run has it without them', async () => {
    const first = run('first');
    expect(await keep(first, { text: apart(TRACED) })).toEqual({ missing: [hashOf(picture('A'))] });
    expect(await take(first)).toBeNull();
    expect(await give(first, picture('A'))).toEqual({ hash: hashOf(picture('A')) });
    expect(await keep(first, { text: apart(TRACED) })).toEqual({});
    end('first');
    expect((await take(run('second')))?.text).toBe(projectToText(TRACED));
  });

  it('is not put together with another picture', async () => {
    const first = run('first');
    await give(first, picture('B'));
    expect(await keep(first, { text: apart(TRACED) })).toEqual({ missing: [hashOf(picture('A'))] });
  });

  it('shares one with other work, and asks for it again when that was let go', async () => {
    const first = run('first');
    await give(first, picture('A'));
    const other = { ...WORK, window: 'window-2', work: 'work-two' };
    expect(await keep(first, { text: apart(TRACED) })).toEqual({});
    expect(await keep(first, { ...other, text: apart(TRACED) })).toEqual({});
    await first['recovery.drop']({ window: WORK.window, work: WORK.work });
    expect(await keep(first, { ...other, edition: 2, text: apart(TRACED) })).toEqual({
      missing: [hashOf(picture('A'))],
    });
    end('first');
    expect((await take(run('second')))?.text).toBe(projectToText(TRACED));
  });

  it('goes on by edits that name one, where it is there', async () => {
    const first = run('first');
    const [motif] = TRACED.motifs as [Project['motifs'][number]];
    const edits = [setUnderlay(motif.id, { picture: picture('B') })];
    const { browser: _b, name: _n, text: _t, ...facts } = WORK;
    const since = { ...facts, edition: 2, edits: editsToText(editsApart(edits, hashed(picture('B')))) };
    await give(first, picture('A'));
    await keep(first, { text: apart(TRACED) });
    expect(await first['recovery.append'](since)).toEqual({ isKept: false });
    await give(first, picture('B'));
    expect(await first['recovery.append'](since)).toEqual({ isKept: true });
    end('first');
    expect((await take(run('second')))?.text).toBe(projectToText(withPicture(picture('B'), TRACED.name)));
    expect(editsFromText(editsToText(edits))).not.toBeNull();
  });

  it('is refused by the edge where what is given is no picture', async () => {
    const first = run('first');
    for (const given of ['no picture', 'data:image/png;base64,AA"AA', `data:image/svg+xml;base64,${'A'.repeat(40)}`]) {
      const answer = await dispatch(first, 'recovery.picture', { window: WORK.window, picture: given });
      expect(answer.ok, given).toBe(false);
    }
  });
});

describe('what is held', () => {
  it('is so many letters, and the oldest go', () => {
    const held = keptPictures(9000);
    const named = (of: string): string => apart(withPicture(of));
    for (const letter of ['A', 'B', 'C']) held.take({ window: 'window-1', picture: picture(letter) });
    expect(held.missingIn(named(picture('A')))).toEqual([hashOf(picture('A'))]);
    expect(held.missingIn(named(picture('B')))).toEqual([]);
    expect(held.missingIn(named(picture('C')))).toEqual([]);
    // Given again, it is the newest.
    held.take({ window: 'window-1', picture: picture('B') });
    held.take({ window: 'window-1', picture: picture('D') });
    expect(held.missingIn(named(picture('B')))).toEqual([]);
    expect(held.missingIn(named(picture('C')))).toEqual([hashOf(picture('C'))]);
  });

  it('is never put into a text that would be longer than one may be', () => {
    const held = keptPictures();
    const long = `data:image/png;base64,${'A'.repeat(2_900_000)}`;
    held.take({ window: 'window-1', picture: long });
    const text = `"picture":"apart:${hashOf(long)}"`.repeat(40);
    let thrown: unknown;
    try {
      held.putBack(text);
    } catch (error) {
      thrown = error;
    }
    expect(problemOf(thrown).code).toBe('file-too-large');
  });
});
