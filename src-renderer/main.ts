import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import './ui/tokens.css';
import './ui/base.css';
import { mount } from 'svelte';
import App from './window/App.svelte';
import { connect, dropEntryKey } from './host/index.ts';
import NotLetIn from './window/NotLetIn.svelte';
import { removeServiceWorkers } from './host/service-workers.ts';
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
