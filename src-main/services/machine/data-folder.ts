/** Where the program keeps what belongs to a user and to no project. */
import { isAbsolute, join } from 'node:path';

type Variables = Readonly<Record<string, string | undefined>>;

/**
 * The user's data folder: as the XDG base directory specification has it on
 * Linux, and as the platforms have it on macOS and Windows. `WALEWRIGHT_DATA`
 * overrides all of them.
 */
export function dataFolder(variables: Variables, platform: NodeJS.Platform, homeFolder: string): string {
  const given = variables['WALEWRIGHT_DATA'];
  if (given !== undefined && isAbsolute(given)) return given;
  if (platform === 'darwin') return join(homeFolder, 'Library', 'Application Support', 'Walewright');
  if (platform === 'win32') return join(variables['APPDATA'] ?? join(homeFolder, 'AppData', 'Roaming'), 'Walewright');
  const xdg = variables['XDG_DATA_HOME'];
  // The specification asks that a relative path there be ignored.
  return join(xdg !== undefined && isAbsolute(xdg) ? xdg : join(homeFolder, '.local', 'share'), 'walewright');
}
