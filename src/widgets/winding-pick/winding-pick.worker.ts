import { answerCalculator } from '../shared/calculator-worker.ts';
import { windingPick } from './state.ts';

answerCalculator(self, windingPick);
