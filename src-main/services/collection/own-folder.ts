/** Where the collection is until the person chooses another folder: beside the settings. */
import { join } from 'node:path';

export function ownCollection(dataFolder: string): string {
  return join(dataFolder, 'collection');
}
