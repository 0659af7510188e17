/** What is drawn of a piece, whole: the project and its plan, and how they are looked at. */
import type { Shows } from '@shared/bed/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import type { FeedingScene } from './feeding-strip.ts';
import type { GroupNames } from './group-numbers.ts';
import type { Look } from './look.ts';
import type { SpaceWords } from './spaces.ts';

export interface PieceScene {
  readonly plan: Plan;
  readonly project: ProjectAt;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
  /** Along the rows; null where it is not shown, or not known yet. */
  readonly feeding: FeedingScene | null;
  /** As worn, or as the knitter sees the needles. */
  readonly shows: Shows;
  /** Cells as stitches. */
  readonly showsStitches: boolean;
  readonly look: Look;
  readonly font: string;
  readonly spaceWords: SpaceWords;
  readonly fold: string;
  readonly groupNames: GroupNames;
  /** Over the profile of floats. */
  readonly profileTitle: string;
  /** Pixels at the top that buttons may cover beside the profile. */
  readonly profileTop: number;
  /** Pixels at the top that the heading covers. */
  readonly stripTop: number;
  /** The group that the commands move. */
  readonly chosen: PlacedGroup | null;
}
