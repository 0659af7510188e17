/** What the panel for files says; it comes when it is first asked for, and its words with it. */
export { filePanel as filePanelWords } from './en/file-panel.ts';
