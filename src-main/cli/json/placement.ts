/** The JSON of `place`. Needles are labels. */
import { label } from '@shared/bed/index.ts';
import type { FindingJson } from './finding.ts';
import type { GroupPlace, PlacementChoice, Spaces } from '@shared/placement/index.ts';

export interface GroupJson {
  readonly first: string;
  readonly last: string;
  readonly figureFirst: string;
  readonly figureLast: string;
}

export interface PlacementJson {
  /** Best first. */
  readonly choices: readonly {
    readonly groups: readonly GroupJson[];
    /** All stitches beside and between the pattern blocks. */
    readonly blocks: Spaces;
    /** All stitches beside and between what the eye sees. */
    readonly figure: Spaces;
    /** Both margins net of the seam allowance, for what is judged. */
    readonly acrossSeam: number;
    readonly imbalance: number;
    readonly fromRule: number;
    readonly why: string;
  }[];
  /** What is wrong with where the piece stands; floats and the like are the plan's. */
  readonly findings: readonly FindingJson[];
}

export function placementJson(
  choices: readonly PlacementChoice[],
  why: (choice: PlacementChoice) => string,
  findings: readonly FindingJson[],
): PlacementJson {
  return {
    choices: choices.map((choice) => ({
      groups: choice.groups.map(groupJson),
      blocks: spacesJson(choice.blocks),
      figure: spacesJson(choice.figure),
      acrossSeam: choice.acrossSeam,
      imbalance: choice.imbalance,
      fromRule: choice.fromRule,
      why: why(choice),
    })),
    findings,
  };
}

export function groupJson({ block, figure }: GroupPlace): GroupJson {
  return {
    first: label(block.first),
    last: label(block.last),
    figureFirst: label(figure.first),
    figureLast: label(figure.last),
  };
}

function spacesJson({ margins, gaps }: Spaces): Spaces {
  return { margins: [margins[0], margins[1]], gaps: [...gaps] };
}
