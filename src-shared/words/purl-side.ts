/** What is said of the purl side; the window is sent it with the view that draws it. */
export { purlSide as purlSideWords } from './en/purl-side.ts';
