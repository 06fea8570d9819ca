import './fetch.css';
import { useEffect, useRef } from 'preact/hooks';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import { beginFetch, planBoth } from '../../actions/fetch-map.ts';
import { asked, type FetchBy, type FetchFor, planned, underWay } from '../../state/fetching.ts';
import { settings } from '../../state/kept.ts';
import { openedDrive, openedMap } from '../../state/opened.ts';
import { dialog } from '../../state/page.ts';
import { mapsOnShelf } from '../../state/shelf.ts';
import { LookAtShelf } from '../look-at-shelf.tsx';
import { missingOf, sayMissing } from '../missing.ts';
import { sayPlan, waysInOrder } from './ways.ts';

/** Beside the verdict of a drive that lacks its map: how much is missing, and the ways to get it, with what each takes. */
export function MapOffer() {
  const map = openedMap.value;
  const drive = openedDrive.value;
  const missing = map && drive && missingOf(map, drive, mapsOnShelf.value);
  if (!missing || !drive) return null;
  const wanted: FetchFor = { source: drive.source, track: drive.followed.taken };
  return (
    <section class="map-offer" aria-labelledby="map-offer">
      <h3 id="map-offer">The map of this drive</h3>
      <p>{sayMissing(missing, settings.value.units)}</p>
      {(missing.from === 'unread' || (missing.damaged ?? []).length > 0) && (
        <p>
          <LookAtShelf />
        </p>
      )}
      {missing.from === 'unread' ? null : isSame(underWay.value, wanted) ? (
        <BeingFetched />
      ) : (
        <Ways key={drive.followed.driveId} drive={wanted} lengthM={missing.lengthM} />
      )}
    </section>
  );
}

/** Takes the place of the ways, and the focus of the one that was chosen. */
function BeingFetched() {
  const said = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (document.activeElement === document.body) said.current?.focus();
  }, []);
  return (
    <p ref={said} class="soft" tabIndex={-1}>
      It is being fetched; how far that is stands at the foot of the window.
    </p>
  );
}

function isSame(a: FetchFor | undefined, b: FetchFor): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function Ways({ drive, lengthM }: { drive: FetchFor; lengthM: number }) {
  const { line, region } = settings.value.servers;
  const times = asked.value;
  // anew where another server was named, or something was asked since
  const rests = JSON.stringify([drive, line, region, times]);
  useEffect(() => {
    const stop = new AbortController();
    void planBoth(JSON.parse(rests)[0], stop.signal);
    return () => stop.abort();
  }, [rests]);
  return (
    <ul class="ways">
      {waysInOrder(lengthM, planned.value.line).map((by) => (
        <Way key={by} by={by} drive={drive} />
      ))}
      <li>
        <button
          type="button"
          onClick={() => {
            dialog.value = 'open';
          }}
        >
          Open a map file…
        </button>
        <span class="small soft">an extract you have</span>
      </li>
    </ul>
  );
}

const WAY: Readonly<Record<FetchBy, string>> = {
  line: 'Fetch along the line…',
  region: 'Fetch whole regions…',
};

function Way({ by, drive }: { by: FetchBy; drive: FetchFor }) {
  const plan = planned.value[by];
  const known = plan && 'by' in plan ? plan : undefined;
  return (
    <li>
      <button
        type="button"
        disabled={!known || isNone(known)}
        onClick={() => known && beginFetch(drive, known)}
      >
        {WAY[by]}
      </button>
      {plan === undefined && <span class="small soft">working out what it takes…</span>}
      {plan && 'problem' in plan && <span class="small">{plan.problem}</span>}
      {known &&
        sayPlan(known).map((say) => (
          <span key={say} class="small soft">
            {say}
          </span>
        ))}
    </li>
  );
}

const isNone = (plan: FetchPlan): boolean => plan.by === 'region' && plan.step === 'none';
