import { createRequire } from 'node:module';

type Library = new (...words: readonly unknown[]) => object;

const load = createRequire(import.meta.url);
let library: Library | undefined;

/**
 * The library opening_hours as the built program has it: over a megabyte, loaded when the first hours are read, since
 * most drives have none.
 */
export default new Proxy(class {}, {
  construct(_, words: unknown[]) {
    library ??= load('opening_hours') as Library;
    return new library(...words);
  },
});
