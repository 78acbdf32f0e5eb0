import Calculator from './Calculator.astro';
import Caution from './Caution.astro';
import Figure from './Figure.astro';
import Hazard from './Hazard.astro';
import Quiz from './Quiz.astro';
import SideNote from './SideNote.astro';
import SiteLink from './SiteLink.astro';
import Source from './Source.astro';
import Step from './Step.astro';
import Takeaways from './Takeaways.astro';
import Term from './Term.astro';
import WideTable from './WideTable.astro';
import WorkedExample from './WorkedExample.astro';

/** What a lesson may use without importing it, by the name it uses. */
export const lessonParts = {
  Calculator,
  Caution,
  Figure,
  Hazard,
  Quiz,
  SideNote,
  Source,
  Step,
  Takeaways,
  Term,
  WorkedExample,
  a: SiteLink,
  table: WideTable,
};
