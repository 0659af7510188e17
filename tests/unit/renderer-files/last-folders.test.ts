/** Where the next panel for files opens. */
import { describe, expect, it } from 'vitest';
import { NO_LAST_FOLDERS, type LastFolders } from '@shared/host/index.ts';
import { Folders } from '../../../src-renderer/files/last-folders.ts';

describe('the folder in which files were chosen last', () => {
  it('is the home folder at first', () => {
    const folders = new Folders();
    expect([folders.at('projects'), folders.at('pictures'), folders.at('exports')]).toEqual([null, null, null]);
  });

  it('is remembered by what was chosen, and told for the next run once it is another', () => {
    const told: LastFolders[] = [];
    const folders = new Folders();
    folders.onChange = (now) => told.push(now);
    folders.chosen('projects', '/home/knitter/knitting');
    folders.chosen('projects', '/home/knitter/knitting');
    folders.chosen('exports', '/home/knitter/out');
    expect(told).toEqual([
      { ...NO_LAST_FOLDERS, projects: '/home/knitter/knitting' },
      { projects: '/home/knitter/knitting', pictures: null, exports: '/home/knitter/out' },
    ]);
    const next = new Folders();
    next.begin(told.at(-1) as LastFolders);
    expect(next.at('exports')).toBe('/home/knitter/out');
  });

  it('of pictures is that of projects until a picture was chosen elsewhere', () => {
    const folders = new Folders();
    folders.chosen('projects', '/knitting');
    expect(folders.at('pictures')).toBe('/knitting');
    folders.chosen('pictures', '/photos');
    expect([folders.at('pictures'), folders.at('projects')]).toEqual(['/photos', '/knitting']);
  });
});
