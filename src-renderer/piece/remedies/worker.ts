/** Works out remedies off the page's thread. */
import { serve } from '../../worker/index.ts';
import { remediesOf } from './remedies-of.ts';

serve(remediesOf);
