/** What colourways and orders of colours say; they come when they are first asked for, and their words with them. */
export { colourOrder as colourOrderWords, colourways as colourwaysWords } from './en/colours.ts';
