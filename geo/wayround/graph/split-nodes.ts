import type { Roads, Tags } from '../../roads/roads.ts';
import { isAccessKey } from '../../tags/access.ts';
import { mayBeLimit } from '../../tags/limit-key.ts';

const TURNING = /^(turning_circle|turning_loop|mini_roundabout)$/;

/** Whether the map says that vehicles turn round at a node. */
export function isTurningPlace(tags: Tags | undefined): boolean {
  return TURNING.test(tags?.['highway'] ?? '');
}

/** Whether passing a node is a matter of its own: a barrier, a limit, a word on who may pass. */
export function isGate(tags: Tags): boolean {
  return (
    tags['barrier'] !== undefined || Object.keys(tags).some((key) => mayBeLimit(key) || isAccessKey(key))
  );
}

/** Nodes within ways at which a road is cut, so that it can be driven up to them. */
export function* splitNodes(roads: Roads): Generator<number> {
  for (const [node, tags] of roads.nodes.tags) if (isTurningPlace(tags) || isGate(tags)) yield node;
}
