import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { sayExtra } from '../../geo/report/ways/say-way.ts';
import { costTogether, driveTogether, waysByBar } from '../../geo/report/ways/ways-by-bar.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { takeWays } from '../actions/take-way.ts';
import { hideWays } from '../actions/ways.ts';
import { Doing } from '../look/doing.tsx';
import { findings } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { type WaysAsked, type WaysFound, ways } from '../state/ways.ts';
import { NoWay } from './no-way.tsx';
import { findingsOf, namePast, namePastAll } from './place-words.ts';
import { WayItem } from './way-item.tsx';
import { WholeDrive } from './whole-drive.tsx';

/** What came of looking for ways: how far that is, the ways, or why there is none. */
export function WaysAnswer() {
  const asked = ways.value;
  if (!asked) return null;
  return <Answer asked={asked} />;
}

function Answer({ asked: { past, doing, found, problem } }: { asked: WaysAsked }) {
  const box = useRef<HTMLDivElement>(null);
  // the button that asked has gone with what it stood in: the next Tab leads to the first way
  useEffect(() => {
    if (document.activeElement === document.body) box.current?.focus();
  }, []);
  // and goes back to it, which stands there again, from what is taken away
  useLayoutEffect(() => {
    const place = box.current?.closest('.ways-past');
    return () => {
      if (box.current?.contains(document.activeElement))
        setTimeout(() => place?.querySelector('button')?.focus());
    };
  }, []);
  return (
    <div ref={box} class="ways-answer" tabIndex={-1}>
      {doing && (
        <div class="ways-doing">
          <Doing doing={doing} />
        </div>
      )}
      {problem !== undefined && (
        <p role="alert" class="problem">
          {clip(problem, 600)}
        </p>
      )}
      {found && <Found found={found} all={past === undefined} />}
      {(found || problem !== undefined) && (
        <p class="ways-hide">
          <button type="button" class="quiet small" onClick={hideWays}>
            Hide the ways
          </button>
        </p>
      )}
    </div>
  );
}

function Found({ found, all }: { found: WaysFound; all: boolean }) {
  const units = settings.value.units;
  const byBar = waysByBar(found.waysRound);
  const heads = all && byBar.length + found.noWayRound.length > 1;
  const name = (ids: readonly string[]) =>
    namePastAll(findingsOf(ids, findings.value, ways.value?.past), units);
  return (
    <>
      {all && driveTogether(found.waysRound).length > 1 && <TakeAll found={found} />}
      {byBar.map(({ findingIds, ways: them }) => (
        <section key={findingIds.join(' ')} aria-label={`Ways past ${name(findingIds)}`}>
          {heads && <h4>Past {name(findingIds)}</h4>}
          {!all && <AlsoPast others={findingIds.filter((id) => id !== ways.peek()?.past)} />}
          <ol class="way-list">
            {them.map(({ way, index }) => (
              <WayItem key={index} way={way} index={index} past={name(findingIds)} />
            ))}
          </ol>
        </section>
      ))}
      {found.noWayRound.map((none) => (
        <section key={none.findingIds.join(' ')} aria-label={`No way past ${name(none.findingIds)}`}>
          {heads && <h4>Past {name(none.findingIds)}</h4>}
          <NoWay none={none} wider={found.wider} />
        </section>
      ))}
    </>
  );
}

/** What the ways of one finding pass besides it. */
function AlsoPast({ others }: { others: readonly string[] }) {
  if (others.length === 0) return null;
  const { units } = settings.value;
  return (
    <p class="small">
      Also past {listed(findingsOf(others, findings.value, undefined).map((each) => namePast(each, units)))}:
    </p>
  );
}

/** The first way past each place, together. */
function TakeAll({ found: { waysRound } }: { found: WaysFound }) {
  const which = driveTogether(waysRound);
  const taken = which.map((at) => waysRound[at]!);
  const cost = sayExtra(costTogether(taken), settings.value.units);
  return (
    <div class="take-all">
      <button type="button" class="chief" onClick={() => takeWays(which, `Past all of it: ${cost}.`)}>
        Take ways {listed(which.map((at) => at + 1))}
      </button>{' '}
      <span>together {cost}</span>
      <p class="way-says">
        <WholeDrive ways={taken} />
      </p>
    </div>
  );
}
