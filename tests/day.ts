/** The date on sheets and files that tests make. */
import { dayFrom } from '@shared/day/index.ts';

export const TEST_DAY = dayFrom('2026-01-02');
