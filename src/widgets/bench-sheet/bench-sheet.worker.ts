import { answerCalculator } from '../shared/calculator-worker.ts';
import { benchSheet } from './state.ts';

answerCalculator(self, benchSheet);
