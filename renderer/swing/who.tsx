import { sayRack } from '../../geo/swing/lessons/tell/say-rack.ts';
import { clip } from '../../geo/units/text.ts';
import { settings } from '../state/kept.ts';
import type { Shown } from './state/shown.ts';

/** A vehicle where two are told apart, and whether a rack is counted. */
export function Who({ of: { card, scene } }: { of: Pick<Shown, 'card' | 'scene'> }) {
  return (
    <>
      <bdi>{clip(card.name, 60)}</bdi>, {sayRack(scene.vehicle, settings.value.units)}
    </>
  );
}
