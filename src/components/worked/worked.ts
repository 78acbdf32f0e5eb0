import { formatQuantity, type Unit } from '../../compute/index.ts';
import type { InitialCase } from '../../widgets/shared/definition.ts';

/** A figure of a lesson: its value in SI units, and as a reader reads it. */
export interface Figure {
  readonly value: number;
  readonly unit: Unit;
  readonly text: string;
}

/** A figure, to so many significant digits; `keep` leaves the zeros that end a solved one ("3.0"), which a marking has not. */
export const figure = (value: number, unit: Unit, digits = 3, trailingZeros: 'keep' | 'trim' = 'trim'): Figure => ({
  value,
  unit,
  text: formatQuantity({ value, unit, digits, trailingZeros }),
});

/** A figure that came out of a solution: the zeros that end it mean something, and stay. */
export const solved = (value: number, unit: Unit, digits = 3): Figure => figure(value, unit, digits, 'keep');

const SMALL_NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** A small count as a word, for running text. */
export const inWords = (count: number): string => SMALL_NUMBERS[count] ?? String(count);

/** One step of a worked example: what it finds, how, and the sum with its numbers in. */
export interface LessonStep {
  readonly ask: string;
  readonly words: string;
  readonly sum: string;
  /** Left to the reader, with the answer in a fold. */
  readonly left?: boolean;
}

/** Everything that a lesson computes from the shop's jobs. */
export interface Worked<K extends string> {
  readonly figures: Readonly<Record<K, Figure>>;
  /** The figures as they stand in the text, and the names of parts. */
  readonly say: Readonly<Record<string, string>>;
  readonly steps: readonly LessonStep[];
  /** Answers of the numeric questions, by question, and the figures that stand in braces in the quiz. */
  readonly quiz: { readonly answers: Readonly<Record<string, number>>; readonly figures: Readonly<Record<string, string>> };
  /** The case that the lesson's calculator opens on. */
  readonly opened: InitialCase;
}

/**
 * Puts a lesson's figures together. `asked` names those that its quiz shows.
 * Throws for a name the lesson does not have, and for a figure that is no finite number.
 */
export function worked<K extends string>(given: {
  readonly figures: Readonly<Record<K, Figure>>;
  /** Texts that are no figures: part names, numbers of parts. */
  readonly names?: Readonly<Record<string, string>>;
  readonly steps: readonly LessonStep[];
  readonly answers: Readonly<Record<string, number>>;
  readonly asked: readonly string[];
  readonly opened: InitialCase;
}): Worked<K> {
  const { figures, names = {}, steps, answers, asked, opened } = given;
  const say: Record<string, string> = { ...names };
  for (const [name, { value, text }] of Object.entries<Figure>(figures)) {
    if (!Number.isFinite(value)) throw new Error(`the lesson's figure "${name}" is not a number`);
    say[name] = text;
  }
  const inQuiz = asked.map((name): [string, string] => {
    const text = say[name];
    if (text === undefined) throw new Error(`the quiz asks for "${name}", which the lesson does not compute`);
    return [name, text];
  });
  return { figures, say: strict(say), steps, quiz: { answers, figures: Object.fromEntries(inQuiz) }, opened };
}

/** A name that a text asks for and that is not there is an author's slip: it stops the build instead of printing a gap. */
const strict = (say: Record<string, string>): Readonly<Record<string, string>> =>
  new Proxy(say, {
    get(all, name) {
      if (typeof name === 'string' && !(name in all)) throw new Error(`the lesson computes no "${name}"`);
      return Reflect.get(all, name) as string;
    },
  });
