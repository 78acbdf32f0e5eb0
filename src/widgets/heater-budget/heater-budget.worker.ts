import { answerCalculator } from '../shared/calculator-worker.ts';
import { heaterBudget } from './state.ts';

answerCalculator(self, heaterBudget);
