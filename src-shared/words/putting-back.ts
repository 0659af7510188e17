/** What is said of a machine that is set again in the middle of a piece; the window is sent it with the bench for knitting. */
export { puttingBack as puttingBackWords } from './en/putting-back.ts';
