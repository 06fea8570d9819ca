import { protocol, type Session } from 'electron';
import { type Assets, securityHeaders } from '../assets.ts';

const SCHEME = 'app';

/** The only origin the window shows and listens to. */
export const ORIGIN = `${SCHEME}://lanegauge`;

/** Once, before the program is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Answers the window's requests from the list of the page's files; nothing else exists. */
export function serveScheme(session: Session, assets: Assets, tileAddress: () => string | undefined): void {
  session.protocol.handle(SCHEME, (request) => {
    const headers = securityHeaders(tileAddress());
    const asset = request.method === 'GET' ? assets.get(pathOf(request.url) ?? '') : undefined;
    if (!asset) return new Response('There is nothing here.\n', { status: 404, headers });
    return new Response(asset.bytes, { headers: { ...headers, 'Content-Type': asset.type } });
  });
}

function pathOf(address: string): string | undefined {
  // taken literally: an address that needs resolving is none of ours
  return address.startsWith(`${ORIGIN}/`) ? address.slice(ORIGIN.length) : undefined;
}
