/** The platform's file dialogs. */
import { dirname, join } from 'node:path';
import { dialog, type BrowserWindow, type FileFilter, type OpenDialogOptions, type SaveDialogOptions } from 'electron';
import { words } from '@shared/words/index.ts';
import type { Dialogs } from '../services/index.ts';

const PROJECTS = ['walewright'];
const PICTURES = ['png', 'jpg', 'jpeg', 'webp', 'bmp', 'svg', 'pbm'];

/** Dialogs that belong to `window()`, while there is one. Each opens where the last of its kind was answered, else where the platform would. */
export function platformDialogs(window: () => BrowserWindow | null): Dialogs {
  const { menu } = words;
  const projects: FileFilter = { name: menu.projects, extensions: PROJECTS };
  const pictures: FileFilter = { name: menu.pictures, extensions: PICTURES };
  const last = new Map<'projects' | 'pictures' | 'exports', string>();

  async function chooseOne(
    of: 'projects' | 'pictures' | 'exports',
    options: OpenDialogOptions,
  ): Promise<string | null> {
    const owner = window();
    const folder = last.get(of);
    const asked = folder === undefined ? options : { ...options, defaultPath: folder };
    const { canceled, filePaths } = await (owner ? dialog.showOpenDialog(owner, asked) : dialog.showOpenDialog(asked));
    const path = canceled ? null : (filePaths[0] ?? null);
    if (path !== null) last.set(of, of === 'exports' ? path : dirname(path));
    return path;
  }

  return {
    openFile: (what) =>
      what === 'picture'
        ? chooseOne('pictures', { title: menu.openPictureTitle, properties: ['openFile'], filters: [pictures] })
        : chooseOne('projects', {
            title: menu.openTitle,
            properties: ['openFile'],
            filters: [{ name: menu.projectsAndPictures, extensions: [...PROJECTS, ...PICTURES] }, projects, pictures],
          }),
    chooseFolder: () =>
      chooseOne('exports', { title: menu.folderTitle, properties: ['openDirectory', 'createDirectory'] }),
    async saveFile(suggestedName) {
      const folder = last.get('projects');
      const options: SaveDialogOptions = {
        title: menu.saveTitle,
        defaultPath: folder === undefined ? suggestedName : join(folder, suggestedName),
        filters: [projects],
        // The other platforms ask before they answer with a file that is there; Linux has to be told to.
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      };
      const owner = window();
      const { canceled, filePath } = await (owner
        ? dialog.showSaveDialog(owner, options)
        : dialog.showSaveDialog(options));
      if (canceled || filePath === '') return null;
      last.set('projects', dirname(filePath));
      return filePath;
    },
  };
}
