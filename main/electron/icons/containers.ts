/** A picture as a PNG file, and its side in pixels. */
export interface Picture {
  readonly size: number;
  readonly png: Buffer;
}

/** A Windows icon: a table of contents, then the PNG files as they are. */
export function writeIco(pictures: readonly Picture[]): Buffer {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  pictures.forEach(({ size, png }, i) => {
    const at = 6 + 16 * i;
    // one byte each: 256 is written as 0
    head.writeUInt8(size % 256, at);
    head.writeUInt8(size % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  });
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** Apple's names for PNG pictures of each size. */
const ICNS_TYPES: Readonly<Record<number, string>> = {
  32: 'ic11',
  64: 'ic12',
  128: 'ic07',
  256: 'ic08',
  512: 'ic09',
  1024: 'ic10',
};

/** A macOS icon: named blocks that hold the PNG files as they are. Sizes it has no name for are left out. */
export function writeIcns(pictures: readonly Picture[]): Buffer {
  const blocks = pictures.flatMap(({ size, png }) => {
    const type = ICNS_TYPES[size];
    return type === undefined ? [] : [block(type, png)];
  });
  return block('icns', Buffer.concat(blocks));
}

function block(type: string, data: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 0, 'latin1');
  head.writeUInt32BE(8 + data.length, 4);
  return Buffer.concat([head, data]);
}
