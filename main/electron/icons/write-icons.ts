import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Picture, writeIcns, writeIco } from './containers.ts';
import { drawMark } from './draw-mark.ts';
import { writePng } from './png.ts';

const SIZES = [16, 32, 48, 64, 128, 256, 512, 1024];
const WINDOWS_SIZES = [16, 32, 48, 64, 128, 256];

/** The built file lies four folders below the root. */
const FOLDER = fileURLToPath(new URL('../../../icons/', import.meta.url));

const pictures: Picture[] = SIZES.map((size) => ({ size, png: writePng(drawMark(size), size) }));
await mkdir(join(FOLDER, 'linux'), { recursive: true });
await Promise.all([
  writeFile(join(FOLDER, 'icon.ico'), writeIco(pictures.filter(({ size }) => WINDOWS_SIZES.includes(size)))),
  writeFile(join(FOLDER, 'icon.icns'), writeIcns(pictures)),
  ...pictures.map(({ size, png }) => writeFile(join(FOLDER, 'linux', `${size}x${size}.png`), png)),
]);
