/** Serving until somebody ends it. */
import type { BrowserHost } from './start.ts';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Resolves when the host has closed: on Ctrl-C, on a request to end, or when
 * `until` resolves; rejects when that does. A second Ctrl-C does not wait for
 * what is still going on.
 */
export async function serveUntilStopped(host: Pick<BrowserHost, 'close'>, until?: Promise<void>): Promise<void> {
  try {
    await new Promise<void>((resolve, reject) => {
      let isStopping = false;
      const stop = (): void => {
        if (isStopping) process.exit(1);
        isStopping = true;
        resolve();
      };
      for (const signal of SIGNALS) process.on(signal, stop);
      until?.then(resolve, reject);
    });
  } finally {
    await host.close();
  }
}
