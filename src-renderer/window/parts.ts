/** The parts of the window that are loaded when they are first asked for. */
import { latePart } from '../ui/load-part.ts';

export const pieceBench = latePart(() => import('../piece/PieceBench.svelte'));
export const sheetBench = latePart(() => import('../sheet/SheetBench.svelte'));
export const knitBench = latePart(() => import('../knit/KnitBench.svelte'));
export const filePanel = latePart(() => import('../files/FilePanel.svelte'));
export const newProject = latePart(() => import('../starting/NewDialog.svelte'));
export const tour = latePart(() => import('../starting/Tour.svelte'));
export const colourwaysDialog = latePart(() => import('../piece/colours/ColourwaysDialog.svelte'));
export const readingIn = latePart(() => import('../reading-in/ReadingIn.svelte'));
