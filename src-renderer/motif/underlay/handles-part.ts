/** The handles of the picture to trace, which come with the tool that moves it. */
export { default as HandleButtons } from '../../canvas/HandleButtons.svelte';
export { UnderlayHandles } from './handles.svelte.ts';
