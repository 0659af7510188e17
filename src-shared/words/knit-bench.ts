/** What is said beside the machine, row by row. The window is sent it with the bench that says it. */
export { knitBench as knitBenchWords } from './en/knit-bench.ts';
