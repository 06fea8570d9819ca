import { effect } from '@preact/signals';
import 'leaflet/dist/leaflet.css';
import './map.css';
import { useEffect, useRef } from 'preact/hooks';
import { select } from '../actions/choose.ts';
import { ask } from '../host/ask.ts';
import { changeNote, noteAt } from '../notes/begin.ts';
import { NotingBanner } from '../notes/noting-banner.tsx';
import { PlacingBanner } from '../plan/placing-banner.tsx';
import { stopsMet } from '../state/day.ts';
import { settings, vehicle } from '../state/kept.ts';
import { keptNotes, noting } from '../state/notes.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { movePlace, type PlanPlace, places, placing, plan, putPlace } from '../state/plan.ts';
import { cursorM, hoveredId, selected, shownFindings } from '../state/shown.ts';
import { lookedAt, raisedWays, waysFound } from '../state/ways.ts';
import { mountMap } from './mount-map.ts';

/** The drive on the map. Everything it shows comes from the window's state, and goes back there. */
export function DriveMap() {
  const box = useRef<HTMLElement>(null);
  const mounted = useRef<ReturnType<typeof mountMap>>(undefined);
  useEffect(() => {
    if (!box.current) return;
    const map = mountMap(box.current, {
      async ask(place) {
        const reply = await ask('tile', place);
        return reply.ok ? reply.value : undefined;
      },
      onCursor: (m) => {
        cursorM.value = m;
      },
      onSelect: select,
      onRaiseWay: (index) => {
        lookedAt.value = index;
      },
      onMovePlace: movePlace,
      onPutPlace(at, betweenM) {
        if (betweenM === undefined) putPlace({ ...at, stop: true });
        else putPlace({ ...at, stop: false }, placeInOrder(betweenM, places.peek(), map.alongM));
      },
      onNote: changeNote,
      onPutNote: noteAt,
      onHover: (id) => {
        hoveredId.value = id;
      },
    });
    mounted.current = map;
    const ends = [
      effect(() => map.showUnits(settings.value.units)),
      effect(() => {
        const drive = openedDrive.value;
        map.showDrive(drive?.followed, drive?.insteadOf !== undefined);
      }),
      effect(() => map.showMap(openedMap.value?.summary)),
      effect(() => map.showBackground(settings.value.tiles)),
      effect(() => map.showFindings(shownFindings.value, selected.value)),
      effect(() => map.showNear(hoveredId.value)),
      effect(() => map.showWays(waysFound.value, raisedWays.value)),
      effect(() => map.showPlan(plan.value && { places: places.value, placing: placing.value })),
      effect(() => map.showStops(stopsMet.value)),
      effect(() => map.showNotes(keptNotes.value ?? [], noting.value)),
      effect(() => map.showCursor(cursorM.value, vehicle.value?.card)),
    ];
    return () => {
      for (const end of ends) end();
      map.dispose();
    };
  }, []);
  return (
    <>
      <section ref={box} class="drive-map" aria-label="Map of the drive" />
      <NotingBanner middle={() => mounted.current?.middle()} />
      <PlacingBanner
        onMiddle={() => {
          const at = mounted.current?.middle();
          if (at) putPlace({ ...at, stop: true });
        }}
      />
    </>
  );
}

/**
 * Where in the order a place goes that was pulled out of the line: after every place that the drive comes to before it.
 * The start stays first and the end last.
 */
function placeInOrder(
  atM: number,
  all: readonly PlanPlace[],
  alongM: (place: PlanPlace, share: number) => number,
): number {
  const between = all.slice(1, -1);
  return 1 + between.filter((place, i) => alongM(place, (i + 1) / (all.length - 1)) < atM).length;
}
