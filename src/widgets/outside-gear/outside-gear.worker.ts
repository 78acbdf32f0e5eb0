import { answerCalculator } from '../shared/calculator-worker.ts';
import { outsideGear } from './state.ts';

answerCalculator(self, outsideGear);
