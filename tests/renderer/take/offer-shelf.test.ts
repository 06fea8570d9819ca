import { expect, it } from 'vitest';
import { offerShelf } from '../../../renderer/take/offer-shelf.ts';

const map = (bytes: number) =>
  ({ source: { kind: 'path', token: 'large-map-token' }, name: 'vale.osm.pbf', bytes, use: 'map' }) as const;

it('a map file over 20 MB is offered to be kept, a smaller one and none are not', () => {
  expect(offerShelf(map(20_000_001))).toMatchObject({
    kind: 'note',
    say: expect.stringContaining('vale.osm.pbf is read anew'),
    offers: [{ say: 'Keep it on the shelf' }],
  });
  expect(offerShelf(map(20_000_000))).toBeUndefined();
  expect(offerShelf(undefined)).toBeUndefined();
});
