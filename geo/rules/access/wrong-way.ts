import { oncePerDrive } from '../../drive/once-per-drive.ts';
import { mayBeOneway, type OnewayThen, onewayThen } from '../../tags/oneway.ts';
import { contextsAt } from '../conditions.ts';
import { isInDoubt } from '../in-doubt.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** A way driven against its mapped direction, or where the direction is not settled. */
export interface WrongWay {
  readonly place: Place;
  readonly oneway: OnewayThen;
  /** most of it is in doubt or filled in: another road may be the driven one */
  readonly doubtful: boolean;
}

const perhapsOneway = oncePerDrive((drive, roads) => drivenWays(drive, roads).filter(mayBeOneway));

/** Every driven way whose one-way tags do not plainly allow the driven direction. */
export function wrongWays(input: RuleInput): WrongWay[] {
  const found: WrongWay[] = [];
  for (const place of perhapsOneway(input.drive, input.roads)) {
    const oneway = onewayThen(place, () => contextsAt(input, place, 'through'));
    if (oneway.allowed === 'yes') continue;
    found.push({ place, oneway, doubtful: isInDoubt(input.drive, place) });
  }
  return found;
}
