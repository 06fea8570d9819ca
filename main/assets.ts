import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { tileOrigin } from './contract/tile-address.ts';

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
  await addFolder(folder, '/', assets);
  return assets;
}

// folder by folder: the archive a packed program reads from knows no recursive listing
async function addFolder(folder: string, path: string, assets: Map<string, Asset>): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    const inside = join(folder, entry.name);
    const type = TYPES[extname(entry.name)];
    if (entry.isDirectory()) await addFolder(inside, `${path}${entry.name}/`, assets);
    else if (entry.isFile() && type !== undefined) {
      const address = path === '/' && entry.name === 'index.html' ? '/' : `${path}${entry.name}`;
      assets.set(address, { type, bytes: new Uint8Array(await readFile(inside)) });
    }
  }
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
