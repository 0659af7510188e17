/** The worker, whose script is loaded when one is first asked for: the page comes without it. */
import { latePart } from '../ui/load-part.ts';

const script = latePart(() => import('./server.ts?worker&inline'));

/** Rejects with `host-unreachable` where the script is not there yet and the host is away. */
export async function startWorker(): Promise<Worker> {
  const { default: ServerWorker } = await script();
  return new ServerWorker();
}
