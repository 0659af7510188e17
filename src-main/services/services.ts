/** The services behind the contract, the same for both shells. */
import type { Services } from '@shared/host/index.ts';
import { documentsOf } from './documents.ts';
import type { Environment } from './environment.ts';
import { writeExportFiles } from './exports.ts';
import { listFolder } from './folders.ts';
import { recentList } from './recent.ts';
import { recoveryOf } from './recovery.ts';
import { settingsOf } from './settings.ts';

export function createServices(environment: Environment): Services {
  const { shell, version, homeFolder } = environment;
  const recent = recentList(environment);
  const documents = documentsOf(environment, recent);
  const recovery = recoveryOf(environment);
  const settings = settingsOf(environment);

  return {
    'host.describe': async () => ({
      shell: shell.kind,
      hasFileDialogs: shell.dialogs !== null,
      version,
      homeFolder,
      openAtStart: shell.openAtStart,
    }),

    'dialogs.openFile': async () => (await shell.dialogs?.openFile()) ?? null,
    'dialogs.saveFile': async ({ suggestedName }) => (await shell.dialogs?.saveFile(suggestedName)) ?? null,
    'dialogs.chooseFolder': async () => (await shell.dialogs?.chooseFolder()) ?? null,

    'folders.list': (params) => listFolder(environment, params),

    'documents.read': (params) => documents.read(params),
    'documents.write': (params) => documents.write(params),
    'documents.recent': () => recent.list(),
    'documents.forgetRecent': async ({ path }) => {
      await recent.forget(path);
      return recent.list();
    },

    'settings.read': () => settings.read(),
    'settings.keep': async (params) => {
      await settings.keep(params);
      return {};
    },

    'recovery.keep': async (params) => {
      await recovery.keep(params);
      return {};
    },
    'recovery.find': ({ asking }) => recovery.find(asking),
    'recovery.take': ({ asking, id }) => recovery.take(asking, id),
    'recovery.drop': async (params) => {
      await recovery.drop(params);
      return {};
    },

    'exports.write': (params) => writeExportFiles(environment, params),

    'window.setState': async (params) => {
      shell.setWindowState(params);
      return {};
    },
  };
}
