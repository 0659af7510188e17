/** Groups and where they can stand, in words. The window is sent them with the bench that says them. */
export { placings as placingWords } from './en/placings.ts';
