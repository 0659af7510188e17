/** `place MOTIF`: the needles on which groups of copies go. */
import { makePlan } from '@shared/knitting/index.ts';
import { words } from '@shared/words/index.ts';
import { blaming } from '../blame.ts';
import type { Command } from '../command.ts';
import { findingJson } from '../json/finding.ts';
import { placementJson } from '../json/placement.ts';
import { readMotif } from '../motif-argument.ts';
import { projectOfMotif, projectWithOptions } from '../piece-options.ts';
import { namedInGivenSize } from '../size-option.ts';
import { placementText } from '../text/placement.ts';

export const placeCommand: Command = {
  name: 'place',
  argument: 'MOTIF',
  options: [
    'stitches',
    'copies',
    'rule',
    'judge',
    'seam-allowance',
    'shows',
    'finished-face',
    'whole',
    'bed',
    'ground',
    'size',
  ],
  required: ['stitches', 'copies'],
  async run(given) {
    const [path] = given.names as [string];
    const named = namedInGivenSize(await readMotif(path, given.values.get('ground')), given);
    // A size is one of a whole piece, which then need not be described.
    const project = given.values.has('size') ? projectWithOptions(named, given) : projectOfMotif(named, given);
    const { bands, findings } = blaming(given, path, () => makePlan(project));
    const choices = bands.flatMap((band) => band.choices);
    const found = findings.filter(({ code }) => code === 'wider-than-bed').map((one) => findingJson(one, project));
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
