import type { Tags } from '../../roads/roads.ts';
import { saysYes } from '../../tags/says-yes.ts';

/**
 * Whether a way that crosses ours on the map runs over it. Where both have a layer and these differ, the layers
 * decide; else a bridge runs over what is none; else the layer that bridge, tunnel or nothing implies.
 */
export function liesAbove(other: Tags, ours: Tags): boolean {
  const otherLayer = layerOf(other);
  const ourLayer = layerOf(ours);
  if (otherLayer !== undefined && ourLayer !== undefined && otherLayer !== ourLayer)
    return otherLayer > ourLayer;
  if (isBridge(other) !== isBridge(ours)) return isBridge(other);
  return layerOrImplied(other) > layerOrImplied(ours);
}

/** The tagged layer, else the one that bridge, tunnel or nothing implies. */
export function layerOrImplied(tags: Tags): number {
  return layerOf(tags) ?? impliedLayer(tags);
}

const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** The tagged layer; undefined when absent or no number. */
export function layerOf(tags: Tags): number | undefined {
  const text = tags['layer']?.trim();
  return text !== undefined && NUMBER.test(text) ? Number(text) : undefined;
}

/** A way on a bridge, or the outline of one. */
export function isBridge(tags: Tags): boolean {
  return saysYes(tags['bridge']) || tags['man_made'] === 'bridge';
}

function impliedLayer(tags: Tags): number {
  if (isBridge(tags)) return 1;
  return saysYes(tags['tunnel']) && tags['tunnel'] !== 'building_passage' ? -1 : 0;
}

/** What closes a driven way in from above along its length: a tunnel, a passage, a gallery, a roof. */
export function roofOver(
  tags: Tags,
): { readonly key: 'tunnel' | 'covered'; readonly text: string } | undefined {
  for (const key of ['tunnel', 'covered'] as const) {
    const text = tags[key];
    if (text !== undefined && text !== 'no' && text !== 'false') return { key, text };
  }
  return undefined;
}
