import type { RefObject } from 'preact';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';

/** What of the grid is in sight, CSS pixels; where it is scrolled to in steps, within one of which nothing is drawn anew. */
interface Sight {
  readonly topPx: number;
  readonly leftPx: number;
  readonly heightPx: number;
  readonly widthPx: number;
}

interface Seen {
  readonly sight: Sight;
  /** counts the frames in which something was drawn */
  readonly frame: number;
  /** has the grid drawn again in the next frame */
  readonly nextFrame: () => void;
}

const [STEP_PX, STEP_ACROSS_PX] = [104, 88];

/**
 * Follows what of a box is in sight. All that a scroll brings is drawn once a frame, before that frame is laid out: the
 * box is measured only when its size changes.
 */
export function useSight(scroller: RefObject<HTMLElement | null>): Seen {
  const [sight, setSight] = useState<Sight>({ topPx: 0, leftPx: 0, heightPx: 800, widthPx: 1000 });
  const [frame, setFrame] = useState(0);
  const asked = useRef(0);
  const nextFrame = useCallback(() => {
    asked.current ||= requestAnimationFrame(() => {
      asked.current = 0;
      const box = scroller.current;
      if (!box) return;
      const [topPx, leftPx] = [inSteps(box.scrollTop, STEP_PX), inSteps(box.scrollLeft, STEP_ACROSS_PX)];
      setSight((now) => (now.topPx === topPx && now.leftPx === leftPx ? now : { ...now, topPx, leftPx }));
      setFrame((count) => count + 1);
    });
  }, [scroller]);
  useEffect(() => {
    const box = scroller.current;
    if (!box) return;
    const watch = new ResizeObserver(() => {
      const { clientHeight: heightPx, clientWidth: widthPx } = box;
      setSight((now) => ({ ...now, heightPx, widthPx }));
      nextFrame();
    });
    watch.observe(box);
    box.addEventListener('scroll', nextFrame, { passive: true });
    return () => {
      watch.disconnect();
      box.removeEventListener('scroll', nextFrame);
      cancelAnimationFrame(asked.current);
      asked.current = 0;
    };
  }, [scroller, nextFrame]);
  return { sight, frame, nextFrame };
}

function inSteps(px: number, stepPx: number): number {
  return Math.floor(px / stepPx) * stepPx;
}
