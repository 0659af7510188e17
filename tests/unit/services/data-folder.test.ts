/** Where a user's own data lies on each platform. */
import { describe, expect, it } from 'vitest';
import { dataFolder } from '../../../src-main/services/index.ts';

const HOME = '/home/knitter';

describe('the data folder', () => {
  it.each([
    // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, or $HOME/.local/share; relative paths are to be ignored.
    { platform: 'linux', variables: {}, folder: '/home/knitter/.local/share/walewright' },
    { platform: 'linux', variables: { XDG_DATA_HOME: '/data' }, folder: '/data/walewright' },
    { platform: 'linux', variables: { XDG_DATA_HOME: '' }, folder: '/home/knitter/.local/share/walewright' },
    { platform: 'linux', variables: { XDG_DATA_HOME: 'data' }, folder: '/home/knitter/.local/share/walewright' },
    // Apple, File System Programming Guide: ~/Library/Application Support (from memory).
    { platform: 'darwin', variables: {}, folder: '/home/knitter/Library/Application Support/Walewright' },
    // Microsoft, Known Folders: FOLDERID_RoamingAppData is %APPDATA% (from memory).
    { platform: 'win32', variables: { APPDATA: '/roaming' }, folder: '/roaming/Walewright' },
    { platform: 'win32', variables: {}, folder: '/home/knitter/AppData/Roaming/Walewright' },
    { platform: 'linux', variables: { WALEWRIGHT_DATA: '/test', XDG_DATA_HOME: '/data' }, folder: '/test' },
  ] as const)('on $platform with $variables is $folder', ({ platform, variables, folder }) => {
    expect(dataFolder(variables, platform, HOME)).toBe(folder);
  });
});
