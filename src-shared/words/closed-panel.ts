/** What is said round the seam; the window is sent it with the closed view. */
export { closedPanel as closedPanelWords } from './en/closed-panel.ts';
