/** Runs what never rejects one after the other, each when the one before is done. */
export function inLine(): <T>(run: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (run) => {
    const done = last.then(run);
    last = done;
    return done;
  };
}
