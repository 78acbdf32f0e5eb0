import { answerCalculator } from '../shared/calculator-worker.ts';
import { switchOn } from './state.ts';

answerCalculator(self, switchOn);
