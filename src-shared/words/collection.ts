/** What the collection of motifs says; it comes when it is first asked for, and its words with it. */
export { collection as collectionWords } from './en/collection.ts';
