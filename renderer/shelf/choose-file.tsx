import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';

/** A button that asks for one map file. */
export function ChooseMapFile({
  say,
  chief = false,
  onChoose,
  children,
}: {
  /** for the field behind the button */
  say: string;
  chief?: boolean;
  onChoose(file: File): void;
  children: ComponentChildren;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class={chief ? 'chief' : ''} onClick={() => input.current?.click()}>
        {children}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={say}
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          // the same file can be chosen again
          currentTarget.value = '';
          if (file) onChoose(file);
        }}
      />
    </>
  );
}
