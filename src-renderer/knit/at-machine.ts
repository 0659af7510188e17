/** What helps where both hands are busy: the screen stays on, and rows are said aloud. */

/** Keeps the screen on while the bench is up, where the platform allows it. Returns a function that stops. */
export function keepAwake(): () => void {
  let isWanted = true;
  let lock: WakeLockSentinel | null = null;
  const ask = async (): Promise<void> => {
    if (document.hidden || !('wakeLock' in navigator)) return;
    // It may be refused: on low battery, or by a setting.
    lock = await navigator.wakeLock.request('screen').catch(() => null);
    if (!isWanted) void lock?.release();
  };
  const again = (): void => void ask();
  void ask();
  // The platform lets go of it when the window is hidden.
  document.addEventListener('visibilitychange', again);
  return () => {
    isWanted = false;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
}

/** Says a sentence by the platform's voice, in place of what it is saying; nothing where there is none. */
export function say(sentence: string): void {
  if (!('speechSynthesis' in globalThis)) return;
  speechSynthesis.cancel();
  speechSynthesis.speak(new SpeechSynthesisUtterance(sentence));
}
