import { answerCalculator } from '../shared/calculator-worker.ts';
import { fusePick } from './state.ts';

answerCalculator(self, fusePick);
