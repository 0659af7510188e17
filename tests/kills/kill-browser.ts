/** A browser killed at once, with all that it runs: what starts it may be a script that stands before it and dies alone. */
import type { BrowserServer } from 'playwright';

/** Playwright starts it as the first of a group of processes, but on Windows. */
export function killBrowser(server: BrowserServer): void {
  const browser = server.process();
  const { pid, exitCode, signalCode } = browser;
  if (pid === undefined || exitCode !== null || signalCode !== null) return;
  if (process.platform === 'win32') browser.kill('SIGKILL');
  else process.kill(-pid, 'SIGKILL');
}
