import type { Tags } from '../../roads/roads.ts';

/** Names and numbers, where they come from, and other words that no rule and no speed reads. */
const SAYS_NOTHING =
  /^((alt_|official_|old_|short_|loc_|int_|nat_|reg_)?(name|ref)(:|$)|source|wikidata$|wikipedia|postal_code$|created_by$|start_date$|check_date|survey:date$|operator|tiger:|is_in|addr:|image|mapillary|description$)/;

/** What a road's tags say for our purposes, as one text: roads that differ in their names alone are judged once. */
export function tagSignature(tags: Tags): string {
  let text = '';
  for (const key in tags) if (!SAYS_NOTHING.test(key)) text += `${key}=${tags[key]}\n`;
  return text;
}
