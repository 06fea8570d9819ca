import './doing.css';
import { given } from '../../geo/given.ts';
import type { Doing as Work } from '../state/happening.ts';
import { sayLeft } from './say-left.ts';

/**
 * Long work under way: what, how far, how long still, and the way to stop it.
 * @param more pieces of work that wait for it
 * @param beside it stands beside something else
 */
export function Doing({ doing, more = 0, beside = false }: { doing: Work; more?: number; beside?: boolean }) {
  const { what, share, secondsLeft, stop } = doing;
  return (
    <div class={beside ? 'doing doing-beside small' : 'doing small'}>
      <span class="doing-what">
        <bdi>{what}</bdi>
        {more > 0 && `, ${more} more to do`}
      </span>
      <progress aria-label={what} {...given({ value: share })} />
      <span class="mono percent">{share === undefined ? '' : `${Math.floor(share * 100)} %`}</span>
      {secondsLeft !== undefined && <span class="doing-left soft">{sayLeft(secondsLeft)}</span>}
      <button type="button" onClick={stop}>
        Cancel<span class="unseen">: {what}</span>
      </button>
    </div>
  );
}
