/**
 * Parts of the program that are loaded when they are first asked for.
 *
 * A browser asks again for a module that could not be had, but not for a style
 * sheet that a part needs: its element stands in the page already. Loaded again
 * without it, the part would stand there unstyled.
 */

/** Loads a part after it could not be had: first the style sheets that are missing, then the part. */
export async function loadAgain<Part>(load: () => Promise<Part>): Promise<Part> {
  const sheets = document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]');
  await Promise.all([...sheets].filter(isMissing).map(fetchAgain));
  return load();
}

/** True for one that could not be had: browsers give it no sheet, an empty one, or one that may not be read. */
function isMissing({ sheet }: HTMLLinkElement): boolean {
  try {
    return sheet === null || sheet.cssRules.length === 0;
  } catch {
    return true;
  }
}

/** Puts a fresh element in the place of one whose style sheet is not there. Rejects if it cannot be had again. */
function fetchAgain(missing: HTMLLinkElement): Promise<void> {
  const fresh = missing.cloneNode() as HTMLLinkElement;
  return new Promise((resolve, reject) => {
    fresh.onload = () => resolve();
    fresh.onerror = () => reject(new Error(`${fresh.href} could not be had`));
    missing.replaceWith(fresh);
  });
}
