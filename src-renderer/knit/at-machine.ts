/** What helps where both hands are busy: the screen stays on, rows are said aloud, a tone tells that hands are needed. */

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

let player: AudioContext | null = null;

/** A short low tone; nothing where the platform has none. */
export function sound(): void {
  if (!('AudioContext' in globalThis)) return;
  player ??= new AudioContext();
  const [tone, loudness] = [player.createOscillator(), player.createGain()];
  const now = player.currentTime;
  tone.frequency.value = 440;
  loudness.gain.setValueAtTime(0.15, now);
  // It fades: a tone that is cut off clicks.
  loudness.gain.exponentialRampToValueAtTime(0.001, now + 0.35);
  tone.connect(loudness).connect(player.destination);
  tone.start(now);
  tone.stop(now + 0.4);
}
