import { randomUUID } from 'node:crypto';
import { counted, cut, listed, quote } from '../../../geo/units/text.ts';
import { CARD_NAME_LONGEST } from '../../../geo/vehicle/bounds.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import { type Collision, mergeItems, type ThreeVersions } from '../files/merge-items.ts';

export interface MergedFleet {
  readonly vehicles: readonly FleetVehicle[];
  /** what was changed elsewhere and what became of it */
  readonly say: readonly string[];
}

const OTHER = ' (other version)';
const NAMED_MOST = 5;

/** A change of the fleet brought together with what another window has made of it meanwhile. */
export function mergeFleet(versions: ThreeVersions<FleetVehicle>): MergedFleet {
  const { items, collisions, taken } = mergeItems(versions, ({ id }) => id);
  const others = new Map<string, FleetVehicle>();
  const say: string[] = [];
  for (const collision of collisions) {
    const other = otherVersion(collision);
    if (other) others.set(collision.id, other);
    say.push(sayCollision(collision, other));
  }
  const vehicles = items.flatMap((each) => {
    const other = others.get(each.id);
    return other ? [each, other] : [each];
  });
  return { vehicles, say: [...say, ...sayTaken(taken)] };
}

/** Their version as a vehicle of its own, where both have changed one card. */
function otherVersion({ mine, theirs }: Collision<FleetVehicle>): FleetVehicle | undefined {
  if (!mine || !theirs) return undefined;
  const name = cut(theirs.card.name, CARD_NAME_LONGEST - OTHER.length) + OTHER;
  return { id: randomUUID(), card: { ...theirs.card, name } };
}

function sayCollision({ mine, theirs }: Collision<FleetVehicle>, other: FleetVehicle | undefined): string {
  const name = nameOf(mine ?? theirs);
  if (other)
    return `${name} was changed in another window too. Both versions are kept: yours, and the other as ${nameOf(other)}. Delete the one you do not want.`;
  if (mine) return `${name} was deleted in another window. You have changed it since, so it stays.`;
  return `${name} was not deleted: it was changed in another window meanwhile. Look at it, and delete it again if it should go.`;
}

function sayTaken(
  taken: readonly { readonly now: FleetVehicle | undefined; readonly was: FleetVehicle | undefined }[],
): string[] {
  const came = taken.flatMap(({ now }) => (now ? [nameOf(now)] : []));
  const went = taken.flatMap(({ now, was }) => (now || !was ? [] : [nameOf(was)]));
  const here =
    came.length > 0 ? [`Added or changed in another window, and now here too: ${named(came)}.`] : [];
  const gone = went.length > 0 ? [`Deleted in another window, and so no longer here: ${named(went)}.`] : [];
  return [...here, ...gone];
}

function named(names: readonly string[]): string {
  if (names.length <= NAMED_MOST) return listed(names);
  return listed([...names.slice(0, NAMED_MOST), counted(names.length - NAMED_MOST, 'other')]);
}

function nameOf(vehicle: FleetVehicle | undefined): string {
  return quote(vehicle?.card.name ?? '');
}
