/**
 * What stands over a sealed call, readable and not to be changed: the host it
 * is for, the window that asks, the how-many-th call of it, and the method.
 *
 * It goes in the header `X-Call` and is sealed about, so that a call opens at
 * no other host, for no other method and, since hosts note what came, once.
 * Behind it stands a proof, a seal of nothing about the head: so a host knows
 * before it makes room for a large body that a window of its own sends it, and
 * not somebody who has heard a window's name on an earlier port.
 */

export interface CallHead {
  /** Where the host listens, such as `127.0.0.1:4000`. */
  readonly authority: string;
  /** Letters, digits, `-` and `_`; another for every page that is loaded. */
  readonly window: string;
  /** From 1. */
  readonly count: number;
  readonly method: string;
}

export const CALL_HEADER = 'x-call';

/** The path of calls, before the method's name. */
export const CALL_PATH = '/call/';

/** The most bytes of a sealed call: the longest text of the contract, with room for what JSON escapes. */
export const MOST_CALL_BYTES = 128 * 1024 * 1024;

export function headText({ authority, window, count, method }: CallHead): string {
  return `${authority} ${window} ${count} ${method}`;
}

/** What goes in {@link CALL_HEADER}. */
export interface CallHeader {
  readonly head: CallHead;
  /** {@link proofOf} `about.head(head)`, with the key that the call is sealed with. */
  readonly proof: string;
}

export function headerText({ head, proof }: CallHeader): string {
  return `${headText(head)} ${proof}`;
}

const HEADER = /^([\w.:[\]-]{1,100}) ([\w-]{16,64}) ([1-9]\d{0,14}) ([A-Za-z.]{1,64}) ([\da-f]{1,100})$/;

/** What stands in a header, none of it believed, or null for a text that is none. */
export function headerFromText(text: string): CallHeader | null {
  const [, authority, window, count, method, proof] = HEADER.exec(text) ?? [];
  if (authority === undefined || window === undefined || method === undefined || proof === undefined) return null;
  return { head: { authority, window, count: Number(count), method }, proof };
}

/** What a call, its proof and its answer are sealed about; an answer opens for its own call alone. */
export const about = {
  head: (head: CallHead): string => `head ${headText(head)}`,
  call: (head: CallHead): string => `call ${headText(head)}`,
  answer: (head: CallHead): string => `answer ${headText(head)}`,
};
