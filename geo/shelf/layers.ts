/**
 * The layers of a part, each cut into tiles of one zoom. What a tile holds is whole: a way that leaves it is in it
 * with all its nodes.
 *
 * - `wide`: roads, ferries and what runs along or over them from afar, large areas, relations, tagged nodes
 * - `near`: small things beside roads, in every tile that their box touches
 * - `far`: zones and ferries, which matter to drives that come near none of their nodes
 * - `draw8`, `draw5`: thinned shapes for the base map when zoomed out; lines of one kind are joined
 * - `service`: places to fill up, empty tanks and stay
 * - `names`, `nameKeys`: the name index, numbered blocks instead of tiles
 */
export const LAYER = {
  wide: 0,
  near: 1,
  far: 2,
  draw8: 3,
  draw5: 4,
  service: 5,
  names: 6,
  nameKeys: 7,
} as const;
export type Layer = (typeof LAYER)[keyof typeof LAYER];

/** Zoom of a layer's tiles on the square of web Mercator; the name index has none. */
export const LAYER_ZOOM = { wide: 12, near: 13, far: 6, draw8: 8, draw5: 5, service: 9 } as const;
export type TiledLayer = keyof typeof LAYER_ZOOM;

/** A way that means nothing by itself but is the edge of an area: beside the kinds of WAY_KIND. */
export const EDGE = 3;
