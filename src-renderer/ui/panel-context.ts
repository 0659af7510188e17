/** Which panel a component stands in. */
import { getContext, setContext } from 'svelte';
import type { PanelMemory } from './panel-memory.ts';

const KEY = Symbol('panel');

/** The memory of the panel that a component stands in; undefined outside of one. */
export function panelMemory(): PanelMemory | undefined {
  return getContext(KEY);
}

/** For all that stands in the component that is being made. */
export function givePanelMemory(memory: PanelMemory): void {
  setContext(KEY, memory);
}
