/** By what other names a command is looked for: for the list of commands, which is loaded when it is first opened. */
export { synonyms, type Synonyms } from './en/synonyms.ts';
