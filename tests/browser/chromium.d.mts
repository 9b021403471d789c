import type { Browser } from 'playwright-core';

export interface FoundChromium {
  readonly executablePath: string;
  readonly args: readonly string[];
  readonly from: string;
}
export function findChromium(): Promise<FoundChromium>;
export function launchChromium(): Promise<{ readonly browser: Browser; readonly from: string }>;
