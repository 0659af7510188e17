/** The parts of the window that are loaded when they are first asked for. */
import type { SheetParts } from '../sheet/prepared.ts';
import { latePart } from '../ui/load-part.ts';
import { workerScript } from '../worker/start.ts';

export const pieceBench = latePart(() => import('../piece/PieceBench.svelte'));
export const sheetBench = latePart(() => import('../sheet/SheetBench.svelte'));
/** What lays the sheet out before its bench is gone to. The bench of the piece, which is gone to first, comes with its own. */
export const sheetParts: SheetParts = {
  benches: () => Promise.all([sheetBench(), pieceBench()]),
  preview: latePart(() => import('../sheet/preview.ts')),
  worker: workerScript,
};
export const knitBench = latePart(() => import('../knit/KnitBench.svelte'));
export const filePanel = latePart(() => import('../files/FilePanel.svelte'));
export const newProject = latePart(() => import('../starting/NewDialog.svelte'));
export const tour = latePart(() => import('../starting/Tour.svelte'));
export const colourwaysDialog = latePart(() => import('../piece/colours/ColourwaysDialog.svelte'));
export const readingIn = latePart(() => import('../reading-in/ReadingIn.svelte'));
