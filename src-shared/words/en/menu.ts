/** The platform's menu and dialogs. */
export const menu = {
  file: 'File',
  edit: 'Edit',
  view: 'View',
  window: 'Window',
  recent: 'Open Recent',
  clearRecent: 'Clear Menu',
  cut: 'Cut',
  copy: 'Copy',
  paste: 'Paste',
  selectAll: 'Select All',
  reload: 'Reload',
  developer: 'Developer Tools',
  zoomIn: 'Zoom In',
  zoomOut: 'Zoom Out',
  zoomReset: 'Actual Size',
  fullScreen: 'Full Screen',
  quit: 'Quit',
  projects: 'Walewright projects',
  pictures: 'Pictures',
  projectsAndPictures: 'Projects and pictures',
  openTitle: 'Open a project or a picture',
  saveTitle: 'Save the project',
  folderTitle: 'Choose a folder',
  /** Window title; the mark says that the work is not saved. */
  windowTitle: (name: string, isUnsaved: boolean, program: string): string =>
    `${isUnsaved ? '• ' : ''}${name} – ${program}`,
};
