import { useRef } from 'preact/hooks';
import { addToYard } from './state/add.ts';

/** A button that asks for GPX files, as many as there are. */
export function ChooseDrives({ chief = false }: { chief?: boolean }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class={chief ? 'chief' : ''} onClick={() => input.current?.click()}>
        Add drives…
      </button>
      <input
        ref={input}
        type="file"
        accept=".gpx"
        multiple
        hidden
        aria-label="Drives for the yard"
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])];
          // the same file can be chosen again
          currentTarget.value = '';
          if (files.length > 0) void addToYard(files);
        }}
      />
    </>
  );
}
