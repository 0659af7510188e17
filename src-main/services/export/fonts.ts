/** Where the sheet's fonts lie on this machine. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { sep } from 'node:path';

const require = createRequire(import.meta.url);

/** Files of the font's two weights. They come from a package, so they are found wherever the program runs from. */
export const FONT_FILES = {
  regular: onDisk(require.resolve('@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf')),
  semibold: onDisk(require.resolve('@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf')),
} as const;

/**
 * In an installed program packages lie in an archive that only Electron's own
 * file functions can look into. The renderer of images is native code and needs
 * the copy that lies unpacked beside the archive.
 */
function onDisk(path: string): string {
  const unpacked = path.replace(`app.asar${sep}`, `app.asar.unpacked${sep}`);
  return existsSync(unpacked) ? unpacked : path;
}
