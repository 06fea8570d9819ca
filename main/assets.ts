import { readdir, readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import { tileOrigin } from './contract/settings.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
};

export interface Asset {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The page's files by address path. What is not in the map does not exist: no path of a request ever touches the disk. */
export type Assets = ReadonlyMap<string, Asset>;

/**
 * Reads the built page whole (a few hundred kilobytes).
 * @param folder the build's output
 * @returns by path, `/` being the page itself; empty where nothing was built
 */
export async function readAssets(folder: string): Promise<Assets> {
  const assets = new Map<string, Asset>();
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    const type = TYPES[extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const file = join(entry.parentPath, entry.name);
    const path = `/${relative(folder, file).split(sep).join('/')}`;
    assets.set(path === '/index.html' ? '/' : path, { type, bytes: new Uint8Array(await readFile(file)) });
  }
  return assets;
}

/**
 * The headers of every answer of either host.
 * @param tileAddress raster background the user has set; its host alone may send pictures
 */
export function securityHeaders(tileAddress: string | undefined): Record<string, string> {
  const tiles = tileAddress === undefined ? undefined : tileOrigin(tileAddress);
  const policy = [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    `img-src 'self' data: blob:${tiles === undefined ? '' : ` ${tiles}`}`,
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "form-action 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ];
  return {
    'Content-Security-Policy': policy.join('; '),
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cache-Control': 'no-store',
    // tile servers ask who calls; a fragment never travels in it
    'Referrer-Policy': 'strict-origin-when-cross-origin',
    'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
  };
}
