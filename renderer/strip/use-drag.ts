import { useRef } from 'preact/hooks';

/** Less than this is a click. */
const DRAG_LEAST_PX = 4;

/** Scrolls an element by dragging it with the mouse; fingers and pens scroll by themselves. */
export function useDrag(box: { readonly current: HTMLElement | null }) {
  const from = useRef<{ readonly y: number; readonly scrollTop: number } | undefined>(undefined);
  const moved = useRef(false);
  return {
    down(event: PointerEvent) {
      moved.current = false;
      if (event.pointerType === 'mouse' && event.button === 0 && box.current)
        from.current = { y: event.clientY, scrollTop: box.current.scrollTop };
    },
    move(event: PointerEvent) {
      const element = box.current;
      // let go outside the window
      if ((event.buttons & 1) === 0) from.current = undefined;
      if (!from.current || !element) return;
      const byPx = event.clientY - from.current.y;
      if (!moved.current && Math.abs(byPx) < DRAG_LEAST_PX) return;
      // only now: a captured click would not reach the mark under it
      if (!moved.current) element.setPointerCapture(event.pointerId);
      moved.current = true;
      element.scrollTop = from.current.scrollTop - byPx;
    },
    end() {
      from.current = undefined;
    },
    /** Whether the click that comes now is the end of a drag. */
    dragged: () => moved.current,
  };
}
