/** Lays out a sheet and draws its pages off the page's thread. */
import { serve } from '../../worker/index.ts';
import { drawnPages } from './drawn-pages.ts';

serve(drawnPages);
