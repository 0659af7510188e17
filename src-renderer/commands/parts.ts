/** What the list of commands loads when it is first opened. */
import { latePart } from '../ui/load-part.ts';

export const otherNames = latePart(() => import('@shared/words/synonyms.ts'));
