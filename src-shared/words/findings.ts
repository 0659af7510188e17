/** What is found wrong with a piece, in sentences. The window is sent them with the bench that says them. */
export { findings as findingWords } from './en/findings.ts';
