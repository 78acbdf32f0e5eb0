import type { Calculator, FieldSet, ViewModel } from './definition.ts';
import { answerFields, type Answer } from './evaluate.ts';
import { answerWork, type Channel } from './long-work.ts';
import type { RawFields } from './raw-fields.ts';

/** The whole of a calculator's worker: each message is its fields as typed, each answer the calculator's. */
export function answerCalculator<F extends FieldSet, R extends ViewModel>(channel: Channel, calculator: Calculator<F, R>): void {
  answerWork<RawFields, Answer<F, R>>(channel, function* (raw) {
    yield 0;
    return answerFields(calculator, raw);
  });
}
