import { describe, expect, it } from 'vitest';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { bytesOf, field, number, type PbfOptions, pbfHolding } from '../../../support/pbf-file.ts';
import { scratchFiles } from '../../../support/scratch-files.ts';

const write = scratchFiles();

/** What is said of a PBF map of one block of these bytes; undefined where it is taken. */
async function said(content: Uint8Array, options?: PbfOptions): Promise<string | undefined> {
  const opened = await openMap([write('map.osm.pbf', pbfHolding([content], options))], undefined);
  return opened.ok ? undefined : opened.error.message;
}

const NO_TEXTS = field(1, field(1, new Uint8Array()));
const EMPTY_TEXT = field(1, new Uint8Array());

/** A block of one way of so many nodes, all the same one. */
const wayOf = (nodes: number) =>
  bytesOf([NO_TEXTS, field(2, field(3, bytesOf([number(1, 10), field(8, new Uint8Array(nodes))])))]);
const relationOf = (members: number) => {
  const parts = [8, 9, 10].map((part) => field(part, new Uint8Array(members)));
  return bytesOf([NO_TEXTS, field(2, field(4, bytesOf([number(1, 10), ...parts])))]);
};

describe('a block made to fill memory and time', () => {
  it.each([
    ['millions of empty texts', field(1, Buffer.alloc(4_000_000, EMPTY_TEXT))],
    ['millions of empty groups', bytesOf([NO_TEXTS, Buffer.alloc(4_000_000, field(2, new Uint8Array()))])],
    ['a way of millions of nodes', wayOf(4_000_000)],
  ])('with %s is refused before it is unpacked', async (_, content) => {
    expect(await said(content)).toMatch(/unpacks to over 200 times its size.*block 2, at byte \d+/);
  });

  it('is read in the clear where only time is asked for it, and little', async () => {
    const texts = field(1, Buffer.alloc(2_000_000, EMPTY_TEXT));
    const groups = Buffer.alloc(2_000_000, field(2, new Uint8Array()));
    expect(await said(bytesOf([texts, groups]), { compression: 'raw' })).toBeUndefined();
  });

  it('is refused in the clear for a way or relation of more parts than any has', async () => {
    const raw = { compression: 'raw' } as const;
    expect(await said(wayOf(500_001), raw)).toMatch(/a list of 500001 numbers, over the 500000/);
    expect(await said(relationOf(500_001), raw)).toMatch(/a list of 500001 numbers, over the 500000/);
    expect(await said(wayOf(500_000), raw)).toBeUndefined();
  });
});
