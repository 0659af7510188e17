/** What a printer is given in place of the window: base.css shows it a printer alone, and the window a screen. */

/** Returns a function that takes the content away. */
export function layForPrinter(content: readonly HTMLElement[]): () => void {
  const printed = document.createElement('div');
  printed.className = 'printed';
  printed.append(...content);
  document.body.append(printed);
  return () => printed.remove();
}

/** Says on paper why it has no sheet. */
export function lineForPrinter(text: string): () => void {
  const line = document.createElement('p');
  line.textContent = text;
  return layForPrinter([line]);
}
