import { effect } from '@preact/signals';
import 'leaflet/dist/leaflet.css';
import './map.css';
import { useEffect, useRef } from 'preact/hooks';
import { select } from '../actions/choose.ts';
import { ask } from '../host/ask.ts';
import { settings, vehicle } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { cursorM, hoveredId, selected, shownFindings } from '../state/shown.ts';
import { lookedAt, raisedWays, waysFound } from '../state/ways.ts';
import { mountMap } from './mount-map.ts';

/** The drive on the map. Everything it shows comes from the window's state, and goes back there. */
export function DriveMap() {
  const box = useRef<HTMLElement>(null);
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
      onHover: (id) => {
        hoveredId.value = id;
      },
    });
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
      effect(() => map.showCursor(cursorM.value, vehicle.value?.card)),
    ];
    return () => {
      for (const end of ends) end();
      map.dispose();
    };
  }, []);
  return <section ref={box} class="drive-map" aria-label="Map of the drive" />;
}
