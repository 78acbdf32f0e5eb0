import { answerCalculator } from '../shared/calculator-worker.ts';
import { converterCheck } from './state.ts';

answerCalculator(self, converterCheck);
