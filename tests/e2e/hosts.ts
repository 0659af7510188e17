/** Hosts that a test starts, kills and starts again, servers in their place, and the windows on them. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { keptWorkFromText } from '../../src-main/services/kept-journal.ts';
import { test as base } from './app.ts';
import { startBuiltHost, type BuiltHost } from './built-host.ts';
import { startStranger, type Gives, type Stranger } from './strangers.ts';

/** A page that is not ours, by its title. */
export const HOSTILE = '<title>hostile</title>';

interface Fixtures {
  /** Starts a host with the test's data folder, on the port of the one before; `file` is opened at the start. All end with the test. */
  readonly run: (file?: string) => Promise<BuiltHost>;
  /** Opens another window of the same browser on the host. */
  readonly newWindow: (host: BuiltHost) => Promise<Page>;
  /** Starts a server that is not ours, on `port` or any. All end with the test. */
  readonly stranger: (html: string, port?: number, gives?: Gives) => Promise<Stranger>;
  /** Kills the host and starts a server that is not ours on its port. */
  readonly takeOver: (host: BuiltHost, gives?: Gives) => Promise<Stranger>;
}

/** What a program that is started keeps, and windows on it. */
export type Starting = Pick<Fixtures, 'run' | 'newWindow'> & { readonly folder: string };

export const test = base.extend<Fixtures>({
  run: async ({ folder, home }, use) => {
    const hosts: BuiltHost[] = [];
    await use(async (file) => {
      const host = await startBuiltHost(home, join(folder, 'data'), file);
      hosts.push(host);
      return host;
    });
    for (const host of hosts) await host.kill();
  },
  newWindow: async ({ context }, use) =>
    use(async (host) => {
      const page = await context.newPage();
      await openOn(page, host);
      return page;
    }),
  // Playwright reads from the pattern that no other fixture is needed.
  stranger: async ({}, use) => {
    const strangers: Stranger[] = [];
    await use(async (html, port, gives) => {
      const stranger = await startStranger(html, port, gives);
      strangers.push(stranger);
      return stranger;
    });
    for (const stranger of strangers) await stranger.close();
  },
  takeOver: async ({ stranger }, use) =>
    use(async (host, gives) => {
      await host.kill();
      return stranger(HOSTILE, portOf(host.origin), gives);
    }),
});

/** Comes in to the host with a new address of it. */
export async function openOn(page: Page, host: BuiltHost): Promise<void> {
  await page.goto(await host.newAddress());
  await page.getByRole('button', { name: 'Commands' }).waitFor();
}

export const portOf = (origin: string): number => Number(new URL(origin).port);

/** The notice that the host is gone. */
export const programEnded = (page: Page): ReturnType<Page['getByRole']> =>
  page.getByRole('alert', { name: 'Program ended' });

/** What was written behind the works that are kept in the test's data folder: a line for each time. */
export function keptLines(folder: string): number {
  return keptTexts(folder).reduce(
    (sum, text) => sum + text.split('\n').filter((line) => line.startsWith('+')).length,
    0,
  );
}

/** The groups of every project that is kept in the test's data folder, in files as the program wrote them. */
export function keptGroups(folder: string): string[] {
  return keptTexts(folder)
    .map((text) => keptWorkFromText(text)?.text ?? '')
    .map((text) => (bandsOf(projectAt(projectFromText(text)))[0]?.groups ?? []).map(({ across }) => across).join(', '))
    .sort();
}

/** The files of kept work, as they stand. What is still being written has a name of its own until it is whole. */
export function keptTexts(folder: string): string[] {
  const place = join(folder, 'data', 'recovery');
  if (!existsSync(place)) return [];
  const names = readdirSync(place).filter((name) => name.endsWith('.backup'));
  return names.map((name) => readFileSync(join(place, name), 'utf8'));
}
