/** The commands, in the order of the help. */
import type { Command } from '../command.ts';
import { collectionCommand } from './collection.ts';
import { demoCommand } from './demo.ts';
import { exportCommand } from './export.ts';
import { followCommand } from './follow.ts';
import { keepCommand } from './keep.ts';
import { measureCommand } from './measure.ts';
import { placeCommand } from './place.ts';
import { planCommand } from './plan.ts';
import { readCommand } from './read.ts';
import { sizesCommand } from './sizes.ts';

export const commands: readonly Command[] = [
  measureCommand,
  readCommand,
  placeCommand,
  planCommand,
  followCommand,
  sizesCommand,
  exportCommand,
  collectionCommand,
  keepCommand,
  demoCommand,
];
