/** The parts of the bench that are loaded when they are first asked for. */
import { latePart } from '../ui/load-part.ts';

export const closedStage = latePart(() => import('./closed/ClosedStage.svelte'));
export const purlStage = latePart(() => import('./purl/PurlStage.svelte'));
export const feedingTable = latePart(() => import('./panel/FeedingTable.svelte'));
export const roundTheSeam = latePart(() => import('./closed/RoundTheSeam.svelte'));
export const allOverPanel = latePart(() => import('./all-over/AllOverPanel.svelte'));
export const yarnPanel = latePart(() => import('./panel/YarnPanel.svelte'));
export const findingsPanel = latePart(() => import('./findings/FindingsPanel.svelte'));
export const sizesDialog = latePart(() => import('./sizes/SizesDialog.svelte'));
