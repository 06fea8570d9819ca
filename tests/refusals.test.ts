import { describe, expect, it } from 'vitest';
import { sourcesBelow, textOf } from './support/imports.ts';
import { type Refusal, refusalsIn } from './support/refusals/refusals-in.ts';

const FILES = ['geo', 'main', 'renderer'].flatMap(sourcesBelow);
const MAKES_ONE = /\bfail\(|new (?:Refusal|Refused)\(|\bmessage:/u;
const refusals = FILES.filter((file) => MAKES_ONE.test(textOf(file))).flatMap(refusalsIn);

/** A part of a sentence begins small and has no end: whoever says the whole names the file and what to do. */
const isWhole = ({ sentence }: Refusal) => !/^(?:[a-z]|⟨message⟩ \(line).*[^.]$/u.test(sentence);
const whole = refusals.filter(isWhole);

/** Words that tell what to do, or what is wanted; or the words of another, put at the end, that do. */
const TELLS_WHAT_TO_DO =
  /\b(?:add|ask|as in|check|choose|comes? first|connect|correct|download|export|fetch|for instance|free|give|hand|import|install|is wanted|keep|leave|load|log in|look|make|measure|mend|move|name|needs?|open|print|put|remove|delete|restarted|save|see|start|take|try|type|unpack|use|wait|weigh|write|is it the right file|begins? with)\b|⟨(?:where|todo|there|need|needs|what|message|join|ended)⟩\.?$|^⟨(?:join|unread)⟩/iu;

/** Sentences after which nothing is to be done, or nothing can be, each with why. */
const NOTHING_TO_DO: ReadonlyMap<RegExp, string> = new Map([
  [/^Cancelled[.;]/u, 'the person has just done that'],
  [/^Stopped\.$/u, 'likewise'],
  [
    /^Something on this drive bars this vehicle\.$/u,
    'the window asks whether it is to be handed over all the same',
  ],
  [/ not believed\.$| is missing\.$/u, 'stands beside the field that is typed in'],
  [/^The program was asked for something it does not know\.$/u, 'no window of ours asks so'],
  [/^This cannot be used: /u, 'likewise'],
  [/^There is no square /u, 'likewise'],
  [/^(?:Two calls carry the same|The call carries no) name\.$/u, 'likewise'],
  [/^This page may not ask the program/u, 'is told to a page that is not ours'],
  [
    / is not a place on Earth\.$| is not a time between /u,
    'whatever reads a place or a time refuses it before',
  ],
  [
    / too busy or out of order | gave up part-way |^The answer of ⟨host⟩ breaks off| has no place free /u,
    'the program waits and asks again by itself, and says so',
  ],
  [/^What is aboard was not saved/u, 'what to do is told in the same sentence'],
]);

/** What only programmers understand. Names of files, formats and options that a person types are none. */
const JARGON =
  /\b(?:E[A-Z]{4,}|undefined|null|NaN|exception|stack trace|parse[drs]?|buffer|callback|schema|stderr|stdout|errno|boolean|integer|regex|payload|timed out|thread|promise|invalid|illegal|fatal|abort(?:ed)?|instance of|\[object|zod|tuple|enum)\b/u;

describe('every sentence that somebody may be refused with', () => {
  it('stands in the list; `npm run unit -- -u tests/refusals.test.ts` writes it anew, to be read before it is kept', async () => {
    expect(refusals.length).toBeGreaterThan(400);
    await expect(listOf(refusals)).toMatchFileSnapshot('refusals.md');
  });

  it('is made where the list looks for it: nothing else in the program writes a problem', () => {
    const elsewhere = FILES.filter(
      (file) =>
        /\bProblem\b/u.test(textOf(file)) &&
        /\bcode:\s*['"`]/u.test(textOf(file)) &&
        !MAKES_ONE.test(textOf(file)),
    );
    expect(elsewhere).toEqual([]);
  });

  it('is a sentence: it begins as one and ends as one', () => {
    expect(whole.filter(({ sentence }) => !/[.?!⟩]$/u.test(sentence)).map(line)).toEqual([]);
  });

  it('says what to do, or nothing is to be done', () => {
    const silent = whole.filter(
      ({ sentence }) =>
        !TELLS_WHAT_TO_DO.test(sentence) && ![...NOTHING_TO_DO.keys()].some((one) => one.test(sentence)),
    );
    expect(silent.map(line)).toEqual([]);
    const unused = [...NOTHING_TO_DO.keys()].filter(
      (one) => !whole.some(({ sentence }) => one.test(sentence)),
    );
    expect(unused).toEqual([]);
  });

  it('holds no word of programmers, and nothing raw of the system', () => {
    expect(refusals.filter(({ sentence }) => JARGON.test(sentence)).map(line)).toEqual([]);
    expect(refusals.filter(({ sentence }) => sentence.includes('⟨String⟩')).map(line)).toEqual([]);
  });
});

function line({ file, code, sentence }: Refusal): string {
  return `${file} ${code}: ${sentence}`;
}

/** By file, each sentence once. */
function listOf(all: readonly Refusal[]): string {
  const files = [...new Set(all.map(({ file }) => file))].sort();
  const parts = files.map((file) => {
    const lines = all
      .filter((each) => each.file === file)
      .map(({ code, sentence }) => `- \`${code}\` ${sentence}`);
    return `## ${file}\n\n${[...new Set(lines)].sort().join('\n')}\n`;
  });
  return `${HEAD}\n${parts.join('\n')}`;
}

const HEAD = `# What somebody may be refused with

Made from the sources by tests/refusals.test.ts, which fails when this list is not what they say. ⟨names⟩ stand for what is put in when it is said; what begins small is a part of another sentence of the list.
`;
