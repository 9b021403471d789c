/** What lies on the desk: preferences, address, projects, the open project and its evaluation. Created once, by App. */
import { on } from 'svelte/events';
import type { SavedProject } from '../storage/projectStore.ts';
import { Assessment } from './assessment.svelte.ts';
import type * as BenchModule from './bench.ts';
import type { Guide } from './guide.svelte.ts';
import { Preferences } from './preferences.svelte.ts';
import type { Answers } from '../../interview/answers.ts';
import { Projects } from './projects.svelte.ts';
import { Route } from './route.svelte.ts';
import { SureStudy } from './sure.svelte.ts';

const openKey = 'overdeck-open';
/** [ms] pause after the last change before it is written. */
const SAVE_PAUSE_ms = 250;

type Bench = typeof BenchModule;

export class Desk {
  readonly preferences = new Preferences();
  readonly route = new Route();
  readonly projects = new Projects();
  readonly assessment = new Assessment(() => this.guide?.reading ?? null);
  readonly sure = new SureStudy();
  #guide = $state.raw<Guide | null>(null);
  #bench = $state.raw<Bench | null>(null);
  #isReady = $state(false);
  #changedElsewhere = $state(false);
  #saving: ReturnType<typeof setTimeout> | undefined;
  readonly #channel = new BroadcastChannel('overdeck');

  get guide(): Guide | null {
    return this.#guide;
  }
  /** The pages of an open project; null until they have been fetched. */
  get pages(): Bench['Pages'] | null {
    return this.#bench?.Pages ?? null;
  }
  get isReady(): boolean {
    return this.#isReady;
  }
  /** True when another tab has saved the project that is open here. */
  get changedElsewhere(): boolean {
    return this.#changedElsewhere;
  }

  /** Reads the projects and opens the one that was open last. */
  async start(): Promise<void> {
    void this.assessment.load();
    on(this.#channel, 'message', (event) => {
      if ((event as MessageEvent<string>).data === this.#guide?.id) this.#changedElsewhere = true;
    });
    await this.projects.load();
    const last = this.#remembered();
    const project = this.projects.list.find(({ id }) => id === last);
    if (project) await this.#place(project);
    this.#isReady = true;
    // The rest of the app comes in while the reader looks at the projects.
    await this.#fetchBench();
  }

  async open(project: SavedProject): Promise<void> {
    this.saveNow();
    await this.#place(project);
    this.route.go('brief', this.#guide?.question ?? null);
  }

  async openNew(name: string, answers: Answers): Promise<void> {
    await this.open(await this.projects.create(name, answers));
  }

  close(): void {
    this.saveNow();
    this.#guide?.end();
    this.#guide = null;
  }

  /** Takes what another tab saved in place of what is open here. */
  async takeOther(): Promise<void> {
    const id = this.#guide?.id;
    await this.projects.load();
    const project = this.projects.list.find((each) => each.id === id);
    if (project) await this.#place(project);
  }

  /** Writes what has not been written yet; called before the page goes away. */
  saveNow(): void {
    if (this.#saving === undefined) return;
    clearTimeout(this.#saving);
    this.#saving = undefined;
    if (!this.#guide) return;
    void this.projects.keep(this.#guide.saved(Date.now()));
    this.#channel.postMessage(this.#guide.id);
  }

  async #fetchBench(): Promise<Bench> {
    this.#bench ??= await import('./bench.ts');
    return this.#bench;
  }

  async #place(project: SavedProject): Promise<void> {
    const { Guide } = await this.#fetchBench();
    this.#guide?.end();
    this.#changedElsewhere = false;
    this.assessment.forget();
    this.#guide = new Guide(project, () => this.#saveSoon());
    this.#remember(project.id);
  }

  #saveSoon(): void {
    clearTimeout(this.#saving);
    this.#saving = setTimeout(() => this.saveNow(), SAVE_PAUSE_ms);
  }

  #remembered(): string | null {
    try {
      return sessionStorage.getItem(openKey) ?? localStorage.getItem(openKey);
    } catch (fault) {
      console.warn('The last project could not be looked up.', fault);
      return null;
    }
  }

  #remember(id: string): void {
    try {
      sessionStorage.setItem(openKey, id);
      localStorage.setItem(openKey, id);
    } catch (fault) {
      console.warn('The open project could not be noted.', fault);
    }
  }
}
