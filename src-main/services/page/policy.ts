/** What the page may do, told to the browser in headers by both shells. */
import { createHash } from 'node:crypto';

/** Nothing but what the page itself brings; `blob:` and `data:` for pictures that it draws. */
export const CONTENT_SECURITY_POLICY = policyWith([]);

function policyWith(inlineScripts: readonly string[]): string {
  return [
    "default-src 'none'",
    ["script-src 'self'", ...inlineScripts.map((text) => `'sha256-${sha256(text)}'`)].join(' '),
    "style-src 'self'",
    'img-src blob: data:',
    "font-src 'self'",
    "connect-src 'self'",
    // Workers come with the scripts that start them, not from whoever has the port then. There is no service worker.
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('base64');

/** For every answer, whatever it is; what is no page may load nothing, should it be shown as one. */
export const GUARD_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
};

/**
 * For the page that the build made, by its `index.html`: the import map in it
 * says what each script is that may be loaded, and what it does not name is
 * not run. Browsers heed these for a page, and for nothing that it loads.
 */
export function headersOfPage(html: string): Readonly<Record<string, string>> {
  const inline = [...html.matchAll(/<script type="importmap">(.*?)<\/script>/gs)].map(([, text = '']) => text);
  return {
    ...GUARD_HEADERS,
    'content-security-policy': policyWith(inline),
    'integrity-policy': 'blocked-destinations=(script)',
    // Of the page alone: with every answer it would be a hundredth of what is sent at the start.
    'permissions-policy': 'camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()',
  };
}
