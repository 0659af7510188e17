/** What a menu is made of. */
import type { CommandId } from '@shared/host/index.ts';

/** Commands that stand together in a menu. */
export interface MenuGroup<Id extends CommandId> {
  readonly ids: readonly Id[];
  /** They are often wanted again: the menu stays open. */
  readonly staysOpen?: boolean;
}
