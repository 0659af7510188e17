export * from './model.ts';
export * from './day.ts';
export type { DayProblems } from './problems.ts';
