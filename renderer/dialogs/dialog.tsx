import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { dialog } from '../state/page.ts';

/** A modal dialog of the page: the browser keeps the focus inside, closes it on Escape, and gives the focus back. */
export function Dialog({
  title,
  wide = false,
  children,
}: {
  title: string;
  wide?: boolean;
  children: ComponentChildren;
}) {
  const element = useRef<HTMLDialogElement>(null);
  // before it is painted, so that a key or a focus that follows at once already finds it open
  useLayoutEffect(() => {
    const shown = element.current;
    shown?.showModal();
    return () => shown?.close();
  }, []);
  return (
    <dialog
      ref={element}
      class={wide ? 'dialog dialog-wide' : 'dialog'}
      aria-labelledby="dialog-title"
      onClose={({ currentTarget }) => {
        // another dialog may have taken its place
        if (currentTarget.isConnected) dialog.value = undefined;
      }}
    >
      {/* inside what scrolls, so that the keyboard can scroll it whatever the body holds */}
      <header class="dialog-head">
        <h2 id="dialog-title">{title}</h2>
        <button type="button" onClick={() => element.current?.close()}>
          Close
        </button>
      </header>
      <div class="dialog-body">{children}</div>
    </dialog>
  );
}
