export * from './operations.ts';
export { nodeFiles } from './node-files.ts';
export { MOST_BYTES_READ, readWhole } from './read-whole.ts';
export { writeWhole, type Wait } from './write-whole.ts';
export { readingProblem, writingProblem } from './problems.ts';
