/** `place MOTIF`: the needles on which groups of copies go. */
import { findingsOf } from '@shared/check/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { blaming } from '../blame.ts';
import type { Command } from '../command.ts';
import { findingJson } from '../json/finding.ts';
import { placementJson } from '../json/placement.ts';
import { readMotif } from '../motif-argument.ts';
import { projectOfMotif, projectWithOptions } from '../piece-options.ts';
import { namedAtGivenPlace } from '../place-option.ts';
import { placementText } from '../text/placement.ts';

export const placeCommand: Command = {
  name: 'place',
  argument: 'MOTIF',
  options: [
    'stitches',
    'copies',
    'rule',
    'even-out',
    'seam-allowance',
    'shows',
    'finished-face',
    'whole',
    'bed',
    'ground',
    'piece',
    'size',
  ],
  required: ['stitches', 'copies'],
  async run(args) {
    const [path] = args.names as [string];
    const named = namedAtGivenPlace(await readMotif(path, args.values.get('ground')), args);
    // A piece is there whole, in each of its sizes: it need not be described.
    const isThere = args.values.has('piece') || args.values.has('size');
    const project = isThere ? projectWithOptions(named, args) : projectOfMotif(named, args);
    const plan = blaming(args, path, () => makePlan(pieceIn(project)));
    const choices = bandsOf(plan).flatMap((band) => band.choices);
    const found = findingsOf(pieceIn(project), plan)
      .filter(({ code }) => code === 'wider-than-bed')
      .map((one) => findingJson(one, project));
    return {
      json: placementJson(choices, words.placement.why, found),
      text: () =>
        placementText(
          choices,
          found.map(({ text }) => text),
        ),
    };
  },
};
