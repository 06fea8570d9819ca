import type { z } from 'zod';

/** The names of all fields that a schema knows, at whatever depth. */
export function fieldsOf(schema: z.core.$ZodType, found = new Set<string>()): ReadonlySet<string> {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'object')
    for (const [name, held] of Object.entries(def.shape)) {
      found.add(name);
      fieldsOf(held, found);
    }
  else if (def.type === 'array') fieldsOf(def.element, found);
  else if (def.type === 'union') for (const option of def.options) fieldsOf(option, found);
  else if (def.type === 'record') fieldsOf(def.valueType, found);
  else if (def.type === 'pipe') fieldsOf(def.in, found);
  else if ('innerType' in def) fieldsOf(def.innerType, found);
  return found;
}
