/** `plan PROJECT` or `plan MOTIF`: what to do row by row, of one piece or of all. */
import { garmentNeed, makePlan, type GarmentNeed, type Plan } from '@shared/plan/index.ts';
import { pieceIn, placesIn, sizeName, type Workpiece } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Args } from '../args.ts';
import { blaming } from '../blame.ts';
import type { Answer, Command } from '../command.ts';
import { garmentYarnJson, type GarmentJson } from '../json/garment.ts';
import { planJson } from '../json/plan.ts';
import { readMotif, type NamedAt } from '../motif-argument.ts';
import { projectOfMotif, projectWithOptions } from '../piece-options.ts';
import { namedAtGivenPlace, scopeGiven } from '../place-option.ts';
import { garmentYarnText } from '../text/garment.ts';
import { onLines } from '../text/on-one-line.ts';
import { planText } from '../text/plan.ts';
import { withThirdYarn } from '../third-yarn.ts';
import { thirdYarn, unit, value } from '../values.ts';
import { placeCommand } from './place.ts';

export const planCommand: Command = {
  name: 'plan',
  argument: 'PROJECT or MOTIF',
  options: [
    ...placeCommand.options,
    'choice',
    'rows',
    'hem',
    'first-row',
    'gauge',
    'start-side',
    'float-limit',
    'own-balls',
    'long-floats',
    'long-carries',
    'anchors',
    'anchors-behind',
    'third-yarn',
    'end-needles',
    'begins',
    'ends',
    'machine',
    'all-pieces',
    'colourway',
    'unit',
  ],
  required: [],
  async run(args) {
    const [path] = args.names as [string];
    const named = namedAtGivenPlace(await readMotif(path, args.values.get('ground')), args);
    const scope = scopeGiven(args);
    if (scope.pieces === 'all') return ofAllPieces(named, args);
    const given = named.isProject ? projectWithOptions(named, args) : projectOfMotif(named, args);
    const lengthUnit = value(args, 'unit', unit) ?? 'cm';
    const [project, plan] = planned(given, args, path);
    const text = (): string => {
      const lines = onLines(project, plan);
      return [planText(project, plan, lengthUnit), garmentYarnText(needOf([lines]), lines[0].yarns, lengthUnit)].join(
        '\n\n',
      );
    };
    return { json: planJson(project, plan), text };
  },
};

type Planned = readonly [project: Workpiece, plan: Plan];

/** With what is asked for rows of many yarns. */
function planned(project: Workpiece, args: Args, called: string): Planned {
  const how = value(args, 'third-yarn', thirdYarn) ?? 'watched';
  const plan = blaming(args, called, () => makePlan(pieceIn(project)));
  const asked = withThirdYarn(project, plan, how);
  return [asked, asked.motifs === project.motifs ? plan : makePlan(pieceIn(asked))];
}

/** The yarn that all pieces take in the size, then the plan of each. */
function ofAllPieces(named: NamedAt, args: Args): Answer {
  const lengthUnit = value(args, 'unit', unit) ?? 'cm';
  const places = placesIn(named.project, { pieces: 'all', sizes: 'this' }).flat();
  const all = places.map((project): Planned => {
    const piece = projectWithOptions({ ...named, project }, args);
    return planned(piece, args, words.knitting.piece(piece.piece, sizeName(piece)));
  });
  const { yarns } = named.project;
  const json: GarmentJson = {
    size: sizeName(named.project),
    yarn: garmentYarnJson(needOf(all), yarns),
    pieces: all.map(([project, plan]) => planJson(project, plan)),
  };
  const text = (): string => {
    const onTheirLines = all.map(([project, plan]) => onLines(project, plan));
    const palette = onTheirLines[0]?.[0].yarns ?? yarns;
    return [
      garmentYarnText(needOf(onTheirLines), palette, lengthUnit),
      ...onTheirLines.map(([project, plan]) => planText(project, plan, lengthUnit)),
    ].join('\n\n\n');
  };
  return { json, text };
}

function needOf(planned: readonly Planned[]): GarmentNeed {
  const [[first]] = planned as readonly [Planned];
  return garmentNeed(
    planned.map(([{ piece, knit }, plan]) => ({ name: piece.name, knit, plan })),
    first,
  );
}
