/** What a pattern's form loads when it is first asked for. */
import { latePart } from '../../ui/load-part.ts';

export const colourOrderForm = latePart(() => import('./ColourOrderForm.svelte'));
