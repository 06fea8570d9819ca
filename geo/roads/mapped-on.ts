import type { Roads, Tags } from './roads.ts';

/** What is mapped on a way, told by its index. A way that is none throws: to go on without its tags would pass it as free. */
export function mappedOn({ ways }: Pick<Roads, 'ways'>, way: number): Tags {
  const tags = ways.tags[way];
  if (tags === undefined) throw new RangeError(`no way ${way} among ${ways.count}`);
  return tags;
}
