/** The parts of the bench that are loaded when they are first asked for. */
import { latePart } from '../ui/load-part.ts';

export const collectionDialog = latePart(() => import('./collection/CollectionDialog.svelte'));
export const doubtsForm = latePart(() => import('./doubts/DoubtsForm.svelte'));
export const floatsPart = latePart(() => import('./drawing/fabric-floats.ts'));
export const handlesPart = latePart(() => import('./underlay/handles-part.ts'));
export const letteringDialog = latePart(() => import('./lettering/LetteringDialog.svelte'));
export const underlayKeeper = latePart(() => import('./underlay/keep.ts'));
export const copiesFields = latePart(() => import('./strip/CopiesFields.svelte'));
export const whichIsRight = latePart(() => import('./panel/WhichIsRight.svelte'));
export const howRepeat = latePart(() => import('./panel/HowRepeat.svelte'));
export const yarnForm = latePart(() => import('./strip/YarnForm.svelte'));
export const selectionOptions = latePart(() => import('./strip/SelectionOptions.svelte'));
export const stampOptions = latePart(() => import('./strip/StampOptions.svelte'));
export const underlayForm = latePart(() => import('./underlay/UnderlayForm.svelte'));
export const underlayPicture = latePart(() => import('./underlay/UnderlayPicture.svelte'));
