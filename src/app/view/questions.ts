/** Titles of the questions by id. */
import { words } from 'virtual:words';

export const questionTitle = (id: string): string => words.questions[id]?.title ?? id;
