/**
 * What stands over a sealed call, readable and not to be changed: the host it
 * is for, the window that asks, the how-many-th call of it, and the method.
 *
 * It goes in the header `X-Call` and is sealed about, so that a call opens at
 * no other host, for no other method and, since hosts note what came, once.
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

const HEAD = /^([\w.:[\]-]{1,100}) ([\w-]{16,64}) ([1-9]\d{0,14}) ([A-Za-z.]{1,64})$/;

/** The head, or null for a text that is none. */
export function headFromText(text: string): CallHead | null {
  const [, authority, window, count, method] = HEAD.exec(text) ?? [];
  if (authority === undefined || window === undefined || method === undefined) return null;
  return { authority, window, count: Number(count), method };
}

/** What a call and its answer are sealed about; an answer opens for its own call alone. */
export const about = {
  call: (head: CallHead): string => `call ${headText(head)}`,
  answer: (head: CallHead): string => `answer ${headText(head)}`,
};
