/** The services behind the contract, the same for both shells. */
import type { Services } from '@shared/host/index.ts';
import { basename, dirname } from 'node:path';
import { collectionOf } from './collection/index.ts';
import { documentsOf } from './documents.ts';
import type { Environment } from './environment.ts';
import { exportsOf } from './exports.ts';
import { listFolder } from './folders.ts';
import { keptPictures } from './kept-pictures.ts';
import { knittingOf } from './knitting/index.ts';
import { reachOf } from './reach.ts';
import { recentList } from './recent.ts';
import { recoveryOf } from './recovery.ts';
import { projectPath, savingOf, type Target } from './saving.ts';
import { settingsOf } from './settings.ts';

export function createServices(environment: Environment): Services {
  const { shell, version, homeFolder } = environment;
  const recent = recentList(environment);
  const reach = reachOf(environment, recent);
  const saving = savingOf(environment, reach);
  const documents = documentsOf(environment, recent, reach, saving);
  const recovery = recoveryOf(environment, recent);
  const pictures = keptPictures();
  const settings = settingsOf(environment);
  const collection = collectionOf(environment, settings, reach);
  const knitting = knittingOf(environment);
  const exports = exportsOf(environment, reach, saving);

  /** The dialog has asked about the file of that very name; if the ending changes it, it has not. */
  async function chosenTarget(chosen: string): Promise<Target> {
    const path = projectPath(chosen);
    reach.grantFile(path);
    const target = await saving.target(dirname(path), basename(path));
    return { ...target, mustAsk: target.mustAsk && path !== chosen };
  }

  return {
    'host.describe': async () => ({
      shell: shell.kind,
      hasFileDialogs: shell.dialogs !== null,
      hasPrintDialog: shell.print !== null,
      version,
      homeFolder,
      openAtStart: shell.openAtStart,
    }),

    'dialogs.openFile': async ({ what }) => {
      const path = (await shell.dialogs?.openFile(what)) ?? null;
      if (path !== null) reach.grantFile(path);
      return path;
    },
    'dialogs.saveFile': async ({ suggestedName }) => {
      const chosen = (await shell.dialogs?.saveFile(suggestedName)) ?? null;
      return chosen === null ? null : chosenTarget(chosen);
    },
    'dialogs.chooseFolder': async () => {
      const folder = (await shell.dialogs?.chooseFolder()) ?? null;
      if (folder !== null) reach.grantFolder(folder);
      return folder;
    },

    'folders.list': (params) => listFolder(environment, reach, params),

    'documents.read': (params) => documents.read(params),
    'documents.target': ({ folder, name }) => saving.target(folder, name),
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

    'collection.list': () => collection.list(),
    'collection.look': (params) => collection.look(params),
    'collection.read': (params) => collection.read(params),
    'collection.keep': (params) => collection.keep(params),
    'collection.choose': async (params) => {
      await collection.choose(params);
      return {};
    },

    'knitting.begin': (params) => knitting.begin(params),
    'knitting.read': ({ of }) => knitting.read(of),
    'knitting.since': (params) => knitting.since(params),
    'knitting.append': (params) => knitting.append(params),
    'knitting.list': () => knitting.list(),
    'knitting.savedAs': async (params) => {
      await knitting.savedAs(params);
      return {};
    },

    'recovery.keep': async ({ text, ...work }) => {
      const missing = pictures.missingIn(text);
      if (missing.length > 0) return { missing };
      await recovery.keep({ ...work, text: pictures.putBack(text) });
      return {};
    },
    'recovery.picture': async (given) => ({ hash: pictures.take(given) }),
    'recovery.append': async ({ edits, ...work }) => {
      if (pictures.missingIn(edits).length > 0) return { isKept: false };
      return { isKept: await recovery.append({ ...work, edits: pictures.putBack(edits) }) };
    },
    'recovery.find': ({ asking }) => recovery.find(asking),
    'recovery.take': ({ asking, id }) => recovery.take(asking, id),
    'recovery.drop': async (params) => {
      pictures.forget(params.window);
      await recovery.drop(params);
      return {};
    },

    'exports.write': (params) => exports.write(params),
    'exports.howFar': async ({ run }) => exports.howFar(run),
    'exports.stop': async ({ run }) => {
      exports.stop(run);
      return {};
    },

    'window.print': async ({ paper }) => ({ isPrinted: (await shell.print?.(paper)) ?? false }),

    'window.setState': async (params) => {
      shell.setWindowState(params);
      return {};
    },
  };
}
