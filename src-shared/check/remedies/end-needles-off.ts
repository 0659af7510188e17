/** End-needle selection switched off, so that the contrast no longer runs to both edges. */
import type { RemedyKind } from './kind.ts';

export interface EndNeedlesOff {
  readonly code: 'end-needles-off';
}

export const endNeedlesOff: RemedyKind<EndNeedlesOff> = {
  keepsPlaces: true,
  propose: ({ piece, gathered: { finding } }) => {
    const isOfMain = 'role' in finding && finding.role === 'main';
    const isOn = piece.machine.endNeedles === 'switch' && piece.patterns.some(({ endNeedles }) => endNeedles);
    return isOn && !isOfMain ? [{ code: 'end-needles-off' }] : [];
  },
  setting: (piece) => {
    if (piece.machine.endNeedles !== 'switch') return null;
    if (!piece.patterns.some(({ endNeedles }) => endNeedles)) return null;
    return {
      change: 'end-needles',
      patterns: piece.patterns.map((_, index) => ({ index, to: { endNeedles: false } })),
    };
  },
};
