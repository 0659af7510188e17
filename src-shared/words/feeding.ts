/** What is said of the yarns in the feeders; the window is sent it with the table of them. */
export { feeding as feedingWords } from './en/feeding.ts';
