/** The parts of the window that are loaded when they are first asked for. */
import type { RestParts } from './prepare-at-rest.ts';
import { latePart } from '../ui/load-part.ts';
import { workerScript } from '../worker/start.ts';

export const pieceBench = latePart(() => import('../piece/PieceBench.svelte'));
export const sheetBench = latePart(() => import('../sheet/SheetBench.svelte'));
/** What makes the benches ready before they are gone to. */
export const restParts: RestParts = {
  benches: () => Promise.all([sheetBench(), pieceBench()]),
  piece: latePart(() => import('../piece/found-at-once.ts')),
  preview: latePart(() => import('../sheet/preview.ts')),
  worker: workerScript,
};
export const knitBench = latePart(() => import('../knit/KnitBench.svelte'));
export const filePanel = latePart(() => import('../files/FilePanel.svelte'));
export const newProject = latePart(() => import('../starting/NewDialog.svelte'));
export const tour = latePart(() => import('../starting/Tour.svelte'));
export const colourwaysDialog = latePart(() => import('../piece/colours/ColourwaysDialog.svelte'));
export const readingIn = latePart(() => import('../reading-in/ReadingIn.svelte'));
