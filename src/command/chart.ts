/** `npm run chart`: prints the interview's statechart as text. */
import { interviewDiagram } from './interviewDiagram.ts';

process.stdout.write(interviewDiagram());
