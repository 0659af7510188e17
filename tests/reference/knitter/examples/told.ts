/** Running orders with other acts than they had. */
import type { ActJson, OrderJson } from '../order.ts';

export type Acts = (acts: ActJson[]) => ActJson[];

/** The order as its acts alone tell it, without what is said to hold in each row. */
export function bare(order: OrderJson): OrderJson {
  return order.map(({ needles: _n, carriage: _c, selecting: _s, feeders: _f, ...item }) => item);
}

/** The bare order with other acts at a reading. */
export function told(order: OrderJson, reading: number, acts: Acts): OrderJson {
  return bare(order).map((item) =>
    item.kind === 'stop' && item.counter === reading ? { ...item, acts: acts(item.acts) } : item,
  );
}

export const without =
  (name: ActJson['act']): Acts =>
  (acts) =>
    acts.filter(({ act }) => act !== name);

export const also =
  (...more: ActJson[]): Acts =>
  (acts) => [...acts, ...more];

export const first =
  (...more: ActJson[]): Acts =>
  (acts) => [...more, ...acts];

export const changed =
  (name: ActJson['act'], change: object): Acts =>
  (acts) =>
    acts.map((act) => (act.act === name ? ({ ...act, ...change } as ActJson) : act));
