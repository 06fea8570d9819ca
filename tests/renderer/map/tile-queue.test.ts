import { describe, expect, it } from 'vitest';
import type { TileFeatures } from '../../../geo/basemap/features.ts';
import { createTileQueue } from '../../../renderer/map/tile-queue.ts';

const tile = (x: number): TileFeatures => ({ z: 3, x, y: 0, sea: false, layers: [], labels: [] });
const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('tiles asked of the host', () => {
  it('are asked for three at a time, in order; one dropped meanwhile is not asked for', async () => {
    const asked: number[] = [];
    const answers: (() => void)[] = [];
    const queue = createTileQueue(
      ({ x }) =>
        new Promise((resolve) => {
          asked.push(x);
          answers.push(() => resolve(tile(x)));
        }),
    );
    const got: (number | undefined)[] = [];
    const owners = Array.from({ length: 6 }, () => ({}));
    for (const [x, owner] of owners.entries())
      queue.ask(owner, { z: 3, x, y: 0 }, (found) => got.push(found?.x));
    expect(asked).toEqual([0, 1, 2]);
    queue.drop(owners[1] as object);
    queue.drop(owners[3] as object);
    answers[0]?.();
    answers[1]?.();
    await settle();
    expect(asked).toEqual([0, 1, 2, 4, 5]);
    expect(got).toEqual([0]);
  });

  it('a host that fails gives no tile, and the next is asked for', async () => {
    const queue = createTileQueue(async ({ x }) => {
      if (x === 0) throw new Error('gone');
      return tile(x);
    });
    const got: (number | undefined)[] = [];
    for (const x of [0, 1]) queue.ask({}, { z: 3, x, y: 0 }, (found) => got.push(found?.x));
    await settle();
    expect(got.sort()).toEqual([1, undefined]);
  });

  it('are not asked for before what comes first is there; those dropped meanwhile never are', async () => {
    const asked: number[] = [];
    let there = () => {};
    const first = new Promise<void>((resolve) => {
      there = resolve;
    });
    const queue = createTileQueue(async ({ x }) => {
      asked.push(x);
      return tile(x);
    }, first);
    const dropped = {};
    queue.ask(dropped, { z: 3, x: 0, y: 0 }, () => {});
    queue.ask({}, { z: 3, x: 1, y: 0 }, () => {});
    await settle();
    expect(asked).toEqual([]);
    queue.drop(dropped);
    there();
    await settle();
    expect(asked).toEqual([1]);
  });
});
