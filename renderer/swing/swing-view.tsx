import './drawing/drawing.css';
import './swing.css';
import './lesson-page.css';
import './yard/yard.css';
import { useEffect } from 'preact/hooks';
import { NoticeArea } from '../look/notice.tsx';
import { description, vehicle } from '../state/kept.ts';
import { NoVehicle } from '../vehicle/no-vehicle.tsx';
import { SwingAnnouncer } from './announcer.tsx';
import { LessonChoice } from './controls/lesson-choice.tsx';
import { Transport } from './controls/transport.tsx';
import { Drawings } from './drawing/drawings.tsx';
import { Legend } from './drawing/legend.tsx';
import { LessonPage } from './lesson-page.tsx';
import { SwingPanel } from './panel.tsx';
import { moveWhileHeld } from './state/hand.ts';
import { listenToKeys } from './state/keys.ts';
import { inYard } from './state/lesson.ts';
import { followMotionWish } from './state/motion-wish.ts';
import { rollWhilePlaying } from './state/play.ts';
import { YardPage } from './yard/yard-page.tsx';
import { YardPanel } from './yard/yard-panel.tsx';
import { YardPlace } from './yard/yard-place.tsx';

/** The tail-swing lesson: a drawing to scale that moves, what decides, and what can be tried. */
export function SwingView() {
  useEffect(() => {
    const ends = [
      followMotionWish(window),
      rollWhilePlaying(window),
      moveWhileHeld(window),
      listenToKeys(window),
    ];
    return () => {
      for (const end of ends) end();
    };
  }, []);
  if (!vehicle.value)
    return description.value ? (
      <NoVehicle why="The lesson is drawn for one vehicle’s wheelbase, overhangs and turning circle." />
    ) : null;
  return (
    <>
      <div class="swing">
        <section class="swing-place" aria-label="The drawing">
          <LessonChoice />
          {inYard.value ? (
            <YardPlace />
          ) : (
            <>
              <Legend />
              <Drawings />
              <Transport />
            </>
          )}
          <NoticeArea />
        </section>
        {inYard.value ? <YardPanel /> : <SwingPanel />}
        {!inYard.value && <SwingAnnouncer />}
      </div>
      {inYard.value ? <YardPage /> : <LessonPage />}
    </>
  );
}
