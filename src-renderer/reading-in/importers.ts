/** The importers of pictures. A new one is a line in the table, its words in `words/en/reading-in.ts`, and its dialog. */
import { latePart } from '../ui/load-part.ts';
import type { Importer } from './importer.ts';

export const IMPORTERS: readonly Importer[] = [
  { name: 'cells', fits: ({ cells }) => cells !== null, dialog: null },
  { name: 'chart', fits: () => true, dialog: latePart(() => import('./chart/ReadChart.svelte')) },
  { name: 'picture', fits: () => true, dialog: latePart(() => import('./FromPicture.svelte')) },
];
