export { startBrowserHost, type BrowserHost, type BrowserHostOptions, type ServePage } from './start.ts';
export { serveUntilStopped } from './serve.ts';
