/** The list of projects in this browser: several side by side, delete with undo. */
import type { Answers } from '../../interview/answers.ts';
import {
  listProjects,
  readProject,
  removeProject,
  writeProject,
  type SavedProject,
} from '../storage/projectStore.ts';

export class Projects {
  #list = $state.raw<readonly SavedProject[]>([]);
  #ready = $state(false);
  #storageFault = $state<string | null>(null);
  #removed = $state.raw<SavedProject | null>(null);

  get list(): readonly SavedProject[] {
    return this.#list;
  }
  get ready(): boolean {
    return this.#ready;
  }
  /** Why nothing is being saved, or null while saving works. */
  get storageFault(): string | null {
    return this.#storageFault;
  }
  /** The project deleted last, until another is deleted or it is brought back. */
  get removed(): SavedProject | null {
    return this.#removed;
  }

  async load(): Promise<void> {
    await this.#guarded(async () => {
      this.#list = await listProjects();
    });
    this.#ready = true;
  }

  /** Makes a project from answers (none for a fresh start) and keeps it. */
  async create(name: string, answers: Answers, passed: readonly string[] = []): Promise<SavedProject> {
    const free = this.#freeName(name);
    const project: SavedProject = {
      version: 1,
      id: crypto.randomUUID(),
      name: free,
      changedAt_ms: Date.now(),
      answers: { ...answers, project: { ...answers.project, name: free } },
      passed,
      question: null,
    };
    await this.keep(project);
    return project;
  }

  /** Saves a project and puts it first in the list. */
  async keep(project: SavedProject): Promise<void> {
    this.#list = [project, ...this.#list.filter(({ id }) => id !== project.id)];
    await this.#guarded(() => writeProject(project));
  }

  find(id: string): Promise<SavedProject | undefined> {
    const known = this.#list.find((project) => project.id === id);
    return known ? Promise.resolve(known) : readProject(id);
  }

  async rename(project: SavedProject, name: string): Promise<SavedProject> {
    const answers = { ...project.answers, project: { ...project.answers.project, name } };
    const renamed = { ...project, name, answers, changedAt_ms: Date.now() };
    await this.keep(renamed);
    return renamed;
  }

  duplicate(project: SavedProject): Promise<SavedProject> {
    return this.create(`${project.name}, copy`, project.answers, project.passed);
  }

  async remove(project: SavedProject): Promise<void> {
    this.#removed = project;
    this.#list = this.#list.filter(({ id }) => id !== project.id);
    await this.#guarded(() => removeProject(project.id));
  }

  async bringBack(): Promise<void> {
    const project = this.#removed;
    this.#removed = null;
    if (project) await this.keep(project);
  }

  /** `Barn`, then `Barn 2`, `Barn 3`: two projects never share a name by accident. */
  #freeName(wanted: string): string {
    const taken = this.#list.map(({ name }) => name);
    let name = wanted;
    for (let number = 2; taken.includes(name); number += 1) name = `${wanted} ${number}`;
    return name;
  }

  async #guarded(work: () => Promise<void>): Promise<void> {
    try {
      await work();
      this.#storageFault = null;
    } catch (fault) {
      this.#storageFault = fault instanceof Error ? fault.message : String(fault);
    }
  }
}
