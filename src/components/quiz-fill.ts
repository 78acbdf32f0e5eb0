import type { Question, SolvedQuestion } from '../widgets/quiz/question.ts';

export interface QuizFigures {
  /** Answers of the numeric questions, by question id, in SI units. */
  readonly answers?: Readonly<Record<string, number>>;
  /** Figures as shown, by the name that stands in braces in the quiz: `{faultAmps}`. */
  readonly figures?: Readonly<Record<string, string>>;
}

/** Puts figures into every text of a value, whatever its depth. */
function withFigures<T>(value: T, figures: Readonly<Record<string, string>>, used: Set<string>): T {
  if (typeof value === 'string') {
    return value.replace(/\{(\w+)\}/g, (_, name: string) => {
      const figure = figures[name];
      if (figure === undefined) throw new Error(`the quiz asks for the figure {${name}}, which the lesson does not give`);
      used.add(name);
      return figure;
    }) as T;
  }
  if (Array.isArray(value)) return value.map((item: unknown) => withFigures(item, figures, used)) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withFigures(item, figures, used)])) as T;
  }
  return value;
}

/**
 * A quiz with what the lesson computed for it. Throws for an answer or a figure that is asked for and not given, or
 * given and asked for nowhere: either way lesson and quiz have drifted apart.
 */
export function fillQuiz(questions: readonly Question[], { answers = {}, figures = {} }: QuizFigures): SolvedQuestion[] {
  const used = new Set<string>();
  const solved = questions.map((question): SolvedQuestion => {
    const filled = withFigures(question, figures, used);
    if (filled.kind !== 'numeric') return filled;
    const answer = answers[filled.id];
    if (answer === undefined || !Number.isFinite(answer)) throw new Error(`the quiz question "${filled.id}" has no computed answer`);
    return { ...filled, answer };
  });
  const idle = [
    ...Object.keys(figures).filter((name) => !used.has(name)),
    ...Object.keys(answers).filter((id) => !questions.some((question) => question.kind === 'numeric' && question.id === id)),
  ];
  if (idle.length > 0) throw new Error(`the lesson computes ${idle.join(', ')} for its quiz, which does not ask for it`);
  return solved;
}
