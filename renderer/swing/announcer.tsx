import { useEffect, useState } from 'preact/hooks';
import { settings } from '../state/kept.ts';
import { contactSentence } from './decides.ts';
import { byHand, playing, reading, type Shown, shown, touchedByHand } from './state.ts';
import { shortText } from './words.ts';

/** A slider being dragged should not be read out at every centimetre. */
const SETTLE_MS = 700;

/** Tells a screen reader what decides, once a change has settled; nothing while the vehicle rolls. */
export function SwingAnnouncer() {
  const [told, tell] = useState('');
  const says = playing.value ? undefined : byHand.value ? sayByHand() : sayLesson(shown.value);
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

function sayLesson(of: Shown | undefined): string | undefined {
  if (!of) return undefined;
  const { units } = settings.value;
  const sum = of.decision?.sum;
  const spare = sum
    ? `${shortText(Math.abs(sum.spareM), sum.spareM < 0 ? 'up' : 'down', units)} ${sum.spareM < 0 ? 'over' : 'spare'}. `
    : '';
  return `${spare}${contactSentence(of.contact)}`;
}

function sayByHand(): string | undefined {
  const now = reading.value;
  if (touchedByHand.value) return `Stopped: it touches ${now?.nearestTo ?? 'what stands there'}.`;
  return 'The wheel is in your hand.';
}
