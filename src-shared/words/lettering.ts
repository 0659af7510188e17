/** What the dialog of lettering says; it comes when it is first asked for, and its words with it. */
export { lettering as letteringWords } from './en/lettering.ts';
