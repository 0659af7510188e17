/** What the forms of yarns and of stitches' lengths say; they come when they are first asked for, and their words with them. */
export { yarn as yarnWords } from './en/yarn.ts';
