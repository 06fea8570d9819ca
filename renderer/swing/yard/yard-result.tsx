import { fullLockSwings } from '../../../geo/swing/corner/swing-figures.ts';
import { LOCK_FROM } from '../../../geo/swing/say-model.ts';
import { swingVehicleOf } from '../../../geo/swing/swing-vehicle.ts';
import { shortIn, wayIn } from '../../../geo/units/in-units.ts';
import { fullLockOf } from '../../../geo/vehicle/lock/full-lock.ts';
import { sayLockDoubt, sayRange } from '../../../geo/vehicle/lock/lock-doubts.ts';
import { settings, vehicle } from '../../state/kept.ts';
import { yardRead } from './yard-state.ts';

/** The radius that the measurements give, with its range, and what the tail does at full lock by it. */
export function YardResult() {
  const { units } = settings.value;
  const [read, of] = [yardRead.value, vehicle.value];
  if (!read || !of) return null;
  if (!read.lock || !read.card) {
    const lock = fullLockOf(of.card);
    return (
      <div class="sum swing-sum">
        <p>
          Until then full lock is taken as <b>{wayIn(units, lock.rearAxleRadiusM)}</b> at the rear axle,{' '}
          {LOCK_FROM[lock.from]}.
        </p>
      </div>
    );
  }
  const { lock } = read;
  const { worstM, worstFromM, worstToM } = fullLockSwings(swingVehicleOf(read.card));
  return (
    <div class="sum swing-sum">
      <p class="decides">
        <span class="decides-number">{wayIn(units, lock.radiusM)}</span> at the rear axle, measured
      </p>
      <p class="sum-line">it may lie anywhere from {sayRange(lock, units)}</p>
      <p>
        At full lock the tail swings out <b>{shortIn(units, worstM, 'up')}</b> (
        {shortIn(units, worstFromM, 'down')} to {shortIn(units, worstToM, 'up')}).
      </p>
      {read.doubts.map((doubt) => (
        <p key={doubt.kind} class="yard-doubt">
          {sayLockDoubt(doubt, units)}
        </p>
      ))}
    </div>
  );
}
