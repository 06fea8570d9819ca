import type { TileFeatures } from '../../geo/basemap/features.ts';

interface TileCoords {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

/** @returns undefined where the host has no tile to give */
export type AskTile = (place: TileCoords) => Promise<TileFeatures | undefined>;

/** Tiles asked for at once: the host cuts one after another, and a page has few connections. */
const AT_ONCE = 3;

interface TileQueue {
  /** `got` is called once, and never after the tile was dropped. */
  ask(owner: object, place: TileCoords, got: (tile: TileFeatures | undefined) => void): void;
  /** A tile nobody looks at any more is not asked for; one already on its way is let come. */
  drop(owner: object): void;
  close(): void;
}

/** @param after nothing is asked for before this ends */
export function createTileQueue(ask: AskTile, after?: Promise<void>): TileQueue {
  const wanted = new Map<
    object,
    { readonly place: TileCoords; readonly got: (tile: TileFeatures | undefined) => void; asked: boolean }
  >();
  let running = 0;
  let held = after !== undefined;
  void after?.then(() => {
    held = false;
    next();
  });

  function next(): void {
    if (held) return;
    for (const [owner, want] of wanted) {
      if (running >= AT_ONCE) return;
      if (want.asked) continue;
      want.asked = true;
      running++;
      void ask(want.place)
        .catch(() => undefined)
        .then((tile) => {
          running--;
          if (wanted.get(owner) === want) {
            wanted.delete(owner);
            want.got(tile);
          }
          next();
        });
    }
  }

  return {
    ask(owner, place, got) {
      wanted.set(owner, { place, got, asked: false });
      next();
    },
    drop: (owner) => void wanted.delete(owner),
    close: () => wanted.clear(),
  };
}
