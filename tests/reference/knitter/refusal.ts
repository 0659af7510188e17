/** What hands cannot do. The knitter adds the reading and the act. */
export class Refusal extends Error {}

export function refuse(why: string): never {
  throw new Refusal(why);
}
