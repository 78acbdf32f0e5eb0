import { answerCalculator } from '../shared/calculator-worker.ts';
import { groundCheck } from './state.ts';

answerCalculator(self, groundCheck);
