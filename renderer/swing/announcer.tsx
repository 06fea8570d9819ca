import { useEffect, useState } from 'preact/hooks';
import { swingingEnd } from '../../geo/swing/lessons/read/judge.ts';
import { announceByHand, announceLesson } from '../../geo/swing/lessons/tell/announce.ts';
import { settings } from '../state/kept.ts';
import { playing } from './state/lesson.ts';
import { byHand, reading, shown } from './state/shown.ts';

/** A slider being dragged should not be read out at every centimetre. */
const SETTLE_MS = 700;

/** Tells a screen reader what decides, once a change has settled; nothing while the vehicle rolls. */
export function SwingAnnouncer() {
  const [told, tell] = useState('');
  const says = playing.value ? undefined : sayNow();
  useEffect(() => {
    if (says === undefined) return;
    const timer = setTimeout(() => tell(says), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [says]);
  return (
    <p class="unseen" role="status" data-testid="swing-announcer">
      {told}
    </p>
  );
}

function sayNow(): string | undefined {
  if (byHand.value) return announceByHand(reading.value);
  const of = shown.value;
  return of?.judged && announceLesson(of.judged, swingingEnd(of.scene), settings.value.units);
}
