/** The platform's file dialogs. */
import { dialog, type BrowserWindow, type FileFilter, type OpenDialogOptions, type SaveDialogOptions } from 'electron';
import { words } from '@shared/words/index.ts';
import type { Dialogs } from '../services/index.ts';

const PROJECTS = ['walewright'];
const PICTURES = ['png', 'jpg', 'jpeg', 'webp', 'bmp', 'svg', 'pbm'];

/** Dialogs that belong to `window()`, while there is one. */
export function platformDialogs(window: () => BrowserWindow | null): Dialogs {
  const { menu } = words;
  const projects: FileFilter = { name: menu.projects, extensions: PROJECTS };

  async function chooseOne(options: OpenDialogOptions): Promise<string | null> {
    const owner = window();
    const { canceled, filePaths } = await (owner
      ? dialog.showOpenDialog(owner, options)
      : dialog.showOpenDialog(options));
    return canceled ? null : (filePaths[0] ?? null);
  }

  return {
    openFile: () =>
      chooseOne({
        title: menu.openTitle,
        properties: ['openFile'],
        filters: [
          { name: menu.projectsAndPictures, extensions: [...PROJECTS, ...PICTURES] },
          projects,
          { name: menu.pictures, extensions: PICTURES },
        ],
      }),
    chooseFolder: () => chooseOne({ title: menu.folderTitle, properties: ['openDirectory', 'createDirectory'] }),
    async saveFile(suggestedName) {
      const options: SaveDialogOptions = {
        title: menu.saveTitle,
        defaultPath: suggestedName,
        filters: [projects],
        // The other platforms ask before they answer with a file that is there; Linux has to be told to.
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      };
      const owner = window();
      const { canceled, filePath } = await (owner
        ? dialog.showSaveDialog(owner, options)
        : dialog.showSaveDialog(options));
      return canceled || filePath === '' ? null : filePath;
    },
  };
}
