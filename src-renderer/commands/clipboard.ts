/**
 * Copying, cutting and pasting by the keys of the platform.
 *
 * The browser tells of them by events that carry the clipboard, and only where
 * they are not wanted for text. Cells that are copied so put a line of text on
 * the clipboard in the place of whatever was there. A picture on it was then
 * copied after them: what was copied last is pasted.
 */
import { words } from '@shared/words/index.ts';
import type { Commands } from './command.ts';
import { isDialogUp, isTextField } from './keyboard.ts';

export interface Clipboarding {
  readonly commands: Commands<'copy' | 'cut' | 'paste'>;
  /** Null where pictures are not taken from the clipboard. */
  readonly takePicture: ((picture: File) => void) | null;
}

/** Does what a clipboard event asks of the chart, if it is ours. */
export function followClipboard(event: ClipboardEvent, { commands, takePicture }: Clipboarding): void {
  if (event.defaultPrevented || isDialogUp() || isTextField(event.target)) return;
  if (event.type === 'paste') {
    const picture = [...(event.clipboardData?.files ?? [])].find(({ type }) => type.startsWith('image/'));
    if (picture && takePicture) {
      event.preventDefault();
      takePicture(picture);
    } else if (commands.paste.whyNot() === null) {
      event.preventDefault();
      void commands.paste.run();
    }
    return;
  }
  const command = event.type === 'cut' ? commands.cut : commands.copy;
  if (command.whyNot() !== null || isTextSelected()) return;
  event.preventDefault();
  event.clipboardData?.setData('text/plain', words.shell.cellsCopied);
  void command.run();
}

/**
 * Keeps the middle button from pasting anywhere but in text. On Linux its release pastes what is
 * selected anywhere, which is never cells; here the button pans. Chromium pastes with the release,
 * Firefox with the click that follows it.
 */
export function refuseMiddlePaste(event: MouseEvent): void {
  if (event.button === 1 && !isTextField(event.target)) event.preventDefault();
}

function isTextSelected(): boolean {
  const selection = window.getSelection();
  return selection !== null && !selection.isCollapsed && selection.toString() !== '';
}
