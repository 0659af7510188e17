import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import './ui/tokens.css';
import './ui/base.css';
import { mount } from 'svelte';
import App from './shell/App.svelte';
import { connectHost } from './shell/host/index.ts';
import { startSession } from './shell/start.ts';

const target = document.getElementById('app');
if (!target) throw new Error('The page has no #app');
const started = await startSession(connectHost());
mount(App, { target, props: { started } });
