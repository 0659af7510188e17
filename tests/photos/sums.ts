/** Outcomes of many photographs as tables. */
import type { Kind } from '../generate/charts/kinds.ts';
import { SURE_FROM, type Outcome } from './tried.ts';

/** Outcomes of many photographs, summed. */
class Sums {
  photos = 0;
  cells = 0;
  wrong = 0;
  unmarked = 0;
  marked = 0;
  yarnsRight = 0;
  asked = 0;
  countsRight = 0;
  refused = 0;
  readonly sure = SURE_FROM.map(() => ({ said: 0, right: 0 }));

  add(outcome: Outcome): void {
    this.photos++;
    this.countsRight += outcome.countsRight ? 1 : 0;
    if (outcome.refused !== null) {
      this.refused++;
      return;
    }
    this.yarnsRight += outcome.yarnsRight ? 1 : 0;
    this.asked += outcome.asked ? 1 : 0;
    this.cells += outcome.cells;
    this.wrong += outcome.wrong;
    this.unmarked += outcome.unmarked;
    this.marked += outcome.marked;
    outcome.sure.forEach(({ said, right }, band) => {
      const sum = this.sure[band] as { said: number; right: number };
      sum.said += said;
      sum.right += right;
    });
  }

  line(name: string): string {
    const share = (part: number, of: number): string => (of === 0 ? '–' : `${((100 * part) / of).toFixed(2)} %`);
    return [
      name.padEnd(30),
      `${this.photos} photos`.padStart(12),
      `right ${share(this.cells - this.wrong, this.cells)}`.padStart(16),
      `wrong unmarked ${this.unmarked}`.padStart(22),
      `marked ${share(this.marked, this.cells)}`.padStart(17),
      `counts ${this.countsRight}/${this.photos}`.padStart(15),
      `yarns ${this.yarnsRight}/${this.photos}`.padStart(13),
      `asked ${this.asked}`.padStart(9),
      `refused ${this.refused}`.padStart(11),
    ].join(' ');
  }

  /** Of cells said to be so sure, how many are right. */
  calibration(): string[] {
    const percent = (share: number): string => `${Number((100 * share).toFixed(1))}`;
    return [
      'Of cells said to be so sure, so many are right:',
      ...this.sure.map(({ said, right }, band) => {
        const to = SURE_FROM[band + 1] ?? 1;
        const share = said === 0 ? '–' : `${((100 * right) / said).toFixed(said > 10_000 ? 3 : 1)} % of ${said}`;
        return `  ${percent(SURE_FROM[band] as number)}–${percent(to)} %: ${share}`;
      }),
    ];
  }
}

/** By kind and together, with how sure they were. */
export function tableOf(outcomes: Iterable<{ readonly kind: Kind; readonly outcome: Outcome }>): string {
  const all = new Sums();
  const byKind = new Map<Kind, Sums>();
  for (const { kind, outcome } of outcomes) {
    const sums = byKind.get(kind) ?? new Sums();
    byKind.set(kind, sums);
    sums.add(outcome);
    all.add(outcome);
  }
  return [...[...byKind].map(([kind, sums]) => sums.line(kind)), all.line('all'), ...all.calibration()].join('\n');
}
