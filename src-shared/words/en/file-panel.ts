/** The program's own panel for files. */
export const filePanel = {
  openTitle: { any: 'Open a project or a picture', picture: 'Open a picture' },
  saveTitle: 'Save the project',
  folderTitle: 'Choose a folder',
  folder: 'Folder',
  name: 'Name',
  up: 'Folder above',
  open: 'Open',
  save: 'Save here',
  choose: 'Choose this folder',
  replacesNothingUnasked: 'You are asked before a file that is there is replaced.',
  contents: (folder: string): string => `What is in ${folder}`,
  folderEntry: (name: string): string => `${name}, folder`,
  empty: 'Nothing here.',
  /** Why a file that is there cannot be chosen; in a list of folders it only shows what is in one. */
  whyNot: {
    any: 'not a project or a picture',
    picture: 'not a picture',
    save: 'not a project',
  },
};
