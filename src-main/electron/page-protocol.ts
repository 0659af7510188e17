/**
 * Our own protocol for the page.
 *
 * `file:` would give the page more rights than it needs; here it has an origin
 * of its own and gets its headers, the content policy among them, from us.
 */
import { protocol, type Session } from 'electron';
import { builtPage, pageFolder } from '../services/index.ts';

const SCHEME = 'walewright';
const PAGE_HOST = 'page';
export const PAGE_ADDRESS = `${SCHEME}://${PAGE_HOST}/`;

/** Must be called before the app is ready. */
export function declarePageProtocol(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

export async function servePage(session: Session): Promise<void> {
  const page = await builtPage(pageFolder());
  session.protocol.handle(SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url);
    const { status, headers, body } = await page.answer(host === PAGE_HOST ? pathname : '');
    return new Response(body, { status, headers });
  });
}
