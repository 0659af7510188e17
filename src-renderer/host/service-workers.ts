/**
 * Service workers at the page's address.
 *
 * The program has none. One that is there was left by another program that had
 * the port before, and would answer for the host.
 */

/** Takes them away. True if one stood between this page and the host: it must be loaded again, without it. */
export async function removeServiceWorkers(): Promise<boolean> {
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
