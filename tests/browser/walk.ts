/** Walks through the interview, once with the mouse and once with nothing but the keyboard. */
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { answers, fieldId, placeFound, roofName, type PickedAnswer } from './answers.ts';

/** More steps than this and the interview would never end. */
const MOST_QUESTIONS = 40;
/** More presses of Tab than any page has controls. */
const MOST_TABS = 120;

export interface Hand {
  start(page: Page): Promise<void>;
  answer(page: Page, answer: PickedAnswer): Promise<void>;
  next(page: Page): Promise<void>;
  /** Goes to a control that stands before or after the place where the focus is. */
  follow(page: Page, target: Locator, where: 'before' | 'after'): Promise<void>;
}

export const questionOn = async (page: Page): Promise<string> =>
  (await page.locator('[data-question]').getAttribute('data-question')) ?? '';

const field = (page: Page, path: string): Locator => page.locator(`#${fieldId(path)}`);
const option = (page: Page, path: string, value: string): Locator =>
  page.locator(`input[name="${fieldId(path)}"][value="${value}"]`);
const nextButton = (page: Page): Locator => page.locator('form button[type="submit"]');
const firstHit = (page: Page): Locator =>
  page
    .getByRole('list', { name: 'Places found' })
    .getByRole('button')
    .filter({ hasText: placeFound })
    .first();

/** Clicks and types as a person with a mouse does. */
export const mouse: Hand = {
  async start(page) {
    await page.getByLabel('Name of the roof').fill(roofName);
    await page.getByRole('button', { name: 'Start the questions' }).click();
  },
  async answer(page, { path, pick, type, find }) {
    if (pick !== undefined) {
      await page
        .locator('label')
        .filter({ has: option(page, path, pick) })
        .click();
    } else if (type !== undefined) {
      await field(page, path).click();
      await field(page, path).fill(type);
    } else if (find !== undefined) {
      await field(page, path).click();
      await field(page, path).pressSequentially(find);
      await firstHit(page).click();
    }
  },
  async next(page) {
    await nextButton(page).click();
  },
  async follow(_, target) {
    await target.click();
  },
};

const isFocused = (target: Locator): Promise<boolean> =>
  target.evaluate((element) => element === document.activeElement);

/** Presses Tab until the target has the focus: a control that Tab never reaches is a fault. */
async function tabTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await target.waitFor();
  for (let presses = 0; presses < MOST_TABS; presses += 1) {
    if (await isFocused(target)) return;
    await page.keyboard.press(key);
  }
  throw new Error(`Tab does not reach ${String(target)}`);
}

/** The radio of the group that Tab stops at: the checked one, else the first. */
async function radioStop(page: Page, path: string): Promise<Locator> {
  const checked = page.locator(`input[name="${fieldId(path)}"]:checked`);
  return (await checked.count()) > 0 ? checked : page.locator(`input[name="${fieldId(path)}"]`).first();
}

async function pickWithArrows(page: Page, path: string, value: string): Promise<void> {
  const stop = await radioStop(page, path);
  await tabTo(page, stop);
  const choices = await page.locator(`input[name="${fieldId(path)}"]`).count();
  const wanted = option(page, path, value);
  if (!(await wanted.isChecked()) && (await isFocused(wanted))) await page.keyboard.press('Space');
  for (let presses = 0; presses < choices && !(await wanted.isChecked()); presses += 1) {
    await page.keyboard.press('ArrowDown');
  }
  expect(await wanted.isChecked(), `${path} takes ${value} by arrow keys`).toBe(true);
}

/** Tab, arrows, letters and Enter; the pointer stays where it is. */
export const keyboard: Hand = {
  async start(page) {
    await tabTo(page, page.getByLabel('Name of the roof'));
    await page.keyboard.type(roofName);
    await page.keyboard.press('Enter');
  },
  async answer(page, { path, pick, type, find }) {
    if (pick !== undefined) {
      await pickWithArrows(page, path, pick);
    } else if (type !== undefined) {
      await tabTo(page, field(page, path));
      await page.keyboard.type(type);
    } else if (find !== undefined) {
      await tabTo(page, field(page, path));
      await page.keyboard.type(find);
      await tabTo(page, firstHit(page));
      await page.keyboard.press('Enter');
    }
  },
  async next(page) {
    await tabTo(page, nextButton(page));
    await page.keyboard.press('Enter');
  },
  async follow(page, target, where) {
    await tabTo(page, target, where === 'before' ? 'Shift+Tab' : 'Tab');
    await page.keyboard.press('Enter');
  },
};

/** Answers every question up to the review and calls `onQuestion` on each; gives the questions in order. */
export async function walk(
  page: Page,
  hand: Hand,
  onQuestion: (question: string) => Promise<void> = async () => undefined,
): Promise<string[]> {
  await hand.start(page);
  await page.locator('[data-question]').waitFor();
  const asked: string[] = [];
  while (asked.length < MOST_QUESTIONS) {
    const question = await questionOn(page);
    asked.push(question);
    for (const answer of answers[question] ?? []) await hand.answer(page, answer);
    await onQuestion(question);
    if (question === 'review') return asked;
    await hand.next(page);
    await page.locator(`[data-question]:not([data-question="${question}"])`).waitFor();
  }
  throw new Error(`the interview did not end: ${asked.join(', ')}`);
}
