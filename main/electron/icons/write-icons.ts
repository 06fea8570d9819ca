import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { type Picture, writeIcns, writeIco } from './containers.ts';

const SIZES = [16, 32, 48, 64, 128, 256, 512, 1024];
const WINDOWS_SIZES = [16, 32, 48, 64, 128, 256];

/** The built file lies four folders below the root. */
const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));
const DRAWING = join(ROOT, 'main/electron/icons/mark.svg');
const FOLDER = join(ROOT, '.build/icons');

const pictures: Picture[] = await Promise.all(
  SIZES.map(async (size) => ({ size, png: await sharp(DRAWING).resize(size).png().toBuffer() })),
);
await mkdir(join(FOLDER, 'linux'), { recursive: true });
await Promise.all([
  writeFile(join(FOLDER, 'icon.ico'), writeIco(pictures.filter(({ size }) => WINDOWS_SIZES.includes(size)))),
  writeFile(join(FOLDER, 'icon.icns'), writeIcns(pictures)),
  ...pictures.map(({ size, png }) => writeFile(join(FOLDER, 'linux', `${size}x${size}.png`), png)),
]);
