export {
  startBrowserHost,
  type BrowserHost,
  type BrowserHostOptions,
  type ServePage,
  type WindowState,
} from './start.ts';
export { serveUntilStopped } from './serve.ts';
export { ownTerminal, printAddresses, type Terminal } from './terminal.ts';
