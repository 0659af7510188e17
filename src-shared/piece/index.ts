export * from './model.ts';
export {
  FIRST_SHAPED_ROW,
  MOST_LENGTH_MM,
  MOST_PIECE_ROWS,
  type EdgeStep,
  type Lengths,
  type Shape,
} from './shape-model.ts';
export * from './loop-model.ts';
export * from './position-model.ts';
export * from './size-model.ts';
export * from './in-sizes.ts';
export * from './gauge.ts';
export * from './gauges.ts';
export * from './laid-out.ts';
export * from './position.ts';
export * from './shape.ts';
export * from './standing.ts';
export * from './carriage-edges.ts';
export * from './even-shaping.ts';
export * from './odd-difference.ts';
export * from './size.ts';
export * from './steps.ts';
export * from './reshape.ts';
export * from './making.ts';
export * from './counts.ts';
export * from './scales.ts';
export * from './given-lengths.ts';
export { gradedCounts, graded, isShapedByBoth, type Grade, type GradedCount } from './grading.ts';
export * from './sections.ts';
export * from './schedule.ts';
export * from './tube.ts';
export * from './beyond-bed.ts';
export type * from './problems.ts';
