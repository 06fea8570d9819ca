import './drive-view.css';
import './drive-paper.css';
import { useEffect, useRef } from 'preact/hooks';
import { NoticeArea } from '../look/notice.tsx';
import { DriveMap } from '../map/drive-map.tsx';
import { PARTS, shownPart } from '../state/parts.ts';
import { Panel } from './panel.tsx';

/** The drive: its map, and beside it the verdict with strip and rows. In a narrow window one part at a time. */
export function DriveView() {
  return (
    <div class="drive-view" data-part={shownPart.value}>
      <Parts />
      <section class="map-place" aria-label="Map">
        <DriveMap />
        <NoticeArea />
      </section>
      <Panel />
    </div>
  );
}

/** What of a part is brought into sight when it is chosen. */
const BEGINS_AT = { list: '.row-open', map: '.map-place', strip: '.strip-place' } as const;

/** Which part a narrow window shows; a wide one has no need of it. */
function Parts() {
  const parts = useRef<HTMLFieldSetElement>(null);
  const shown = shownPart.value;

  // the window scrolls as a whole: a part chosen far down the findings would begin above its upper edge
  useEffect(() => {
    parts.current?.parentElement?.querySelector(BEGINS_AT[shown])?.scrollIntoView({ block: 'nearest' });
  }, [shown]);

  return (
    <fieldset ref={parts} class="parts">
      <legend class="unseen">What is shown of the drive</legend>
      {PARTS.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          aria-pressed={shownPart.value === id}
          onClick={() => {
            shownPart.value = id;
          }}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}
