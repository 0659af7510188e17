/** The worker, whose script is loaded when one is first asked for: the page comes without it. */
import { latePart } from '../ui/load-part.ts';

/** Its script, which is had once it was asked for. */
export const workerScript = latePart(() => import('./server.ts?worker&inline'));

/** Rejects with `host-unreachable` where the script is not there yet and the host is away. */
export async function startWorker(): Promise<Worker> {
  const { default: ServerWorker } = await workerScript();
  return new ServerWorker();
}
