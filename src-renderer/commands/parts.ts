/** What the list of commands, and menus, load when they are first opened. */
import { latePart } from '../ui/load-part.ts';

export const otherNames = latePart(() => import('@shared/words/synonyms.ts'));
export const menuItems = latePart(() => import('./MenuItems.svelte'));
