import { createEmptyCard, FSRS, Rating, State } from 'ts-fsrs';
import type { Card } from 'ts-fsrs';
import type { Answer } from './learning-record.ts';
import { inOrder } from './sittings.ts';

/** A question with its place in the review. */
export interface ReviewCard {
  readonly lesson: string;
  readonly question: string;
  readonly dueAt: string;
  /** Estimated chance, 0 to 1, that it is still known. */
  readonly recall: number;
  readonly timesAnswered: number;
  /** Times it had been known and then was not. */
  readonly lapses: number;
  /** True when the latest answer chose something unsafe. */
  readonly unsafe: boolean;
}

/**
 * The scheduler: free spaced repetition with its default weights, aimed at 90 % recall. Steps within a day are off (a
 * reader comes back to a course in days) and so is the random spread (the same record always gives the same dates).
 */
const SCHEDULER = new FSRS({ request_retention: 0.9, enable_short_term: false, enable_fuzz: false, maximum_interval: 365 });

/**
 * Each question's card, worked out by going through the answers again. Only the first answer of a sitting counts, and
 * of answers in the same instant the first: later ones were given with the reasons in view.
 */
function cardsOf(answers: readonly Answer[]): Map<string, { readonly card: Card; readonly latest: Answer }> {
  const cards = new Map<string, { readonly card: Card; readonly latest: Answer }>();
  const counted = new Set<string>();
  for (const answer of [...answers].sort(inOrder)) {
    const key = JSON.stringify([answer.lesson, answer.question]);
    const once = JSON.stringify([key, answer.sitting]);
    if (counted.has(once)) continue;
    counted.add(once);
    const at = new Date(answer.at);
    const before = cards.get(key)?.card ?? createEmptyCard<Card>(at);
    const rating = answer.correct && answer.unsafe.length === 0 ? Rating.Good : Rating.Again;
    cards.set(key, { card: SCHEDULER.next(before, at, rating).card, latest: answer });
  }
  return cards;
}

/**
 * The cards of every question answered at least once, soonest due first. `known` limits them to questions that the
 * course still asks.
 */
export function reviewCards(options: {
  readonly answers: readonly Answer[];
  readonly now: Date;
  readonly known?: (lesson: string, question: string) => boolean;
}): readonly ReviewCard[] {
  const { answers, now, known = () => true } = options;
  return [...cardsOf(answers).values()]
    .filter(({ latest }) => known(latest.lesson, latest.question))
    .map(({ card, latest }) => ({
      lesson: latest.lesson,
      question: latest.question,
      dueAt: card.due.toISOString(),
      recall: card.state === State.New ? 0 : SCHEDULER.get_retrievability(card, now, false),
      timesAnswered: card.reps,
      lapses: card.lapses,
      unsafe: latest.unsafe.length > 0,
    }))
    .sort((a, b) => (a.dueAt < b.dueAt ? -1 : a.dueAt > b.dueAt ? 1 : 0));
}

/** The questions to ask again now: unsafe ones first, then those least likely to be still known. */
export function dueQuestions(options: Parameters<typeof reviewCards>[0]): readonly ReviewCard[] {
  const now = options.now.toISOString();
  return reviewCards(options)
    .filter(({ dueAt }) => dueAt <= now)
    .sort((a, b) => Number(b.unsafe) - Number(a.unsafe) || a.recall - b.recall);
}
