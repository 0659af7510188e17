import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import './ui/tokens.css';
import './ui/base.css';
import { mount } from 'svelte';
import App from './window/App.svelte';
import { connect, dropEntryKey } from './host/index.ts';
import NotLetIn from './window/NotLetIn.svelte';
import { startSession } from './window/start.ts';
import { loadPartsFrom } from './ui/load-part.ts';

/** No await at the top: parts that are loaded later wait for this file to have run to its end. */
async function openWindow(): Promise<void> {
  const target = document.getElementById('app');
  if (!target) throw new Error('The page has no #app');
  if (await removeServiceWorkers()) return location.reload();
  const entered = await connect();
  if (entered.kind === 'outside') {
    // A new address in the same tab differs only behind `#`, which loads nothing.
    addEventListener('hashchange', () => location.reload());
    mount(NotLetIn, { target, props: { why: entered.why } });
    return;
  }
  addEventListener('hashchange', dropEntryKey);
  loadPartsFrom(entered.connection);
  const started = await startSession(entered.connection);
  mount(App, { target, props: { started } });
}

void openWindow();

/**
 * Service workers at the page's address.
 *
 * The program has none. One that is there was left by another program that had
 * the port before, and would answer for the host.
 */

/** Takes them away. True if one stood between this page and the host: it must be loaded again, without it. */
async function removeServiceWorkers(): Promise<boolean> {
  try {
    const workers = navigator.serviceWorker;
    const found = await workers.getRegistrations();
    const removed = await Promise.all(found.map((registration) => registration.unregister()));
    return workers.controller !== null && removed.includes(true);
  } catch {
    // Electron, and browsers that keep nothing, have none.
    return false;
  }
}
