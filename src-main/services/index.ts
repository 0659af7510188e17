export { createServices } from './services.ts';
export { dispatch } from './dispatch.ts';
export type { Dialogs, Environment, Presence, Shell } from './environment.ts';
export type { FileOperations, FileState, OpenedFile, OpenHow } from './files/index.ts';
export { failureCode, nodeFiles, processesHere, underLock, writeAside, writeWhole } from './files/index.ts';
export * from './machine/index.ts';
export * from './page/index.ts';
export { pageFolder, programFolder, programVersion } from './program-folder.ts';
