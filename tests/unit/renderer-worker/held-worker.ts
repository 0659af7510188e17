/** Workers for tests: one that hears and says what it is told to, and one that serves in this very thread. */
import type { Helper, JobName } from '../../../src-renderer/worker/index.ts';
import { jobs } from '../../../src-renderer/worker/jobs/index.ts';
import type { FromWorker, ToWorker } from '../../../src-renderer/worker/messages.ts';
import { serve } from '../../../src-renderer/worker/serve.ts';

type Asked<Name extends JobName> = ToWorker<Name> & { kind: 'ask' };

/** Notes what it is asked, and says nothing by itself. */
export class HeldWorker<Name extends JobName> implements Helper<Name> {
  onmessage: Helper<Name>['onmessage'] = null;
  onmessageerror: Helper<Name>['onmessageerror'] = null;
  onerror: Helper<Name>['onerror'] = null;
  readonly heard: ToWorker<Name>[] = [];
  readonly transfers: (readonly Transferable[])[] = [];
  isEnded = false;

  postMessage(message: ToWorker<Name>, transfer: readonly Transferable[] = []): void {
    this.heard.push(message);
    if (transfer.length > 0) this.transfers.push(transfer);
  }
  terminate(): void {
    this.isEnded = true;
  }
  get asked(): Asked<Name>[] {
    return this.heard.filter((message) => message.kind === 'ask') as Asked<Name>[];
  }
  say(message: FromWorker<Name>): void {
    this.onmessage?.({ data: message } as MessageEvent);
  }
  die(): void {
    this.onerror?.({} as ErrorEvent);
  }
}

/** Does its work between the turns of this thread; messages are copied and take a turn, as those of a worker are. */
export class ServingWorker<Name extends JobName> extends HeldWorker<Name> {
  #hear: ((event: MessageEvent<ToWorker>) => void) | null = null;

  constructor() {
    super();
    serve(jobs, {
      addEventListener: (_, hear) => (this.#hear = hear),
      postMessage: (message) => this.#later(message, (copy) => this.say(copy as FromWorker<Name>)),
    });
  }
  override postMessage(message: ToWorker<Name>): void {
    super.postMessage(message);
    this.#later(message, (copy) => this.#hear?.({ data: copy } as MessageEvent));
  }
  #later<Message>(message: Message, deliver: (copy: Message) => void): void {
    const copy = structuredClone(message);
    setTimeout(() => {
      if (!this.isEnded) deliver(copy);
    });
  }
}

/** Starts workers of a kind, and has those that were started. */
export function starting<Name extends JobName, Made extends HeldWorker<Name>>(
  make: () => Made,
): { readonly start: () => Promise<Made>; readonly workers: Made[] } {
  const workers: Made[] = [];
  return {
    workers,
    start: async () => {
      const worker = make();
      workers.push(worker);
      return worker;
    },
  };
}
