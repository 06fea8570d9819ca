import type { LoadItem } from './load-list.ts';

/** How hard it is to do without: nobody leaves medicine behind; clothes and food only where nothing else helps. */
export type Need = 'never left' | 'left last' | 'may be left';

/** Words that tell it; the first that fits decides. What is called otherwise may be left. */
const WORDS: readonly (readonly [Need, RegExp])[] = [
  [
    'never left',
    /\b(medicines?|medication|medical|insulin|oxygen|first[ -]aid|wheelchairs?|walking (?:aid|frame)|crutches|nebuliser|inhalers?|child seats?|car seats?|cot|nappies|baby|warning triangles?|fire (?:extinguisher|blanket)|jack|spare wheel|wheel brace)\b/i,
  ],
  [
    'left last',
    /\b(clothes|clothing|shoes|boots|coats?|jackets?|rainwear|food|groceries|provisions|drinking water|bedding|bed ?clothes|duvets?|pillows?|sleeping bags?|blankets?|towels?|toiletries|wash ?bags?|pet food|dog food|documents|papers|gas (?:bottle|cylinder)s?|tools?|tool ?box|mains cable|hook-?up (?:cable|lead)|levelling (?:ramps|blocks))\b/i,
  ],
];

/** How hard an item is to do without, by its name: the guess changes no figure, only what is proposed first. */
export function needOf({ name }: Pick<LoadItem, 'name'>): Need {
  return WORDS.find(([, words]) => words.test(name))?.[0] ?? 'may be left';
}
