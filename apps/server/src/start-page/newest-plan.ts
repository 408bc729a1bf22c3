import { Injectable } from '@nestjs/common';
import type { Plan } from '#planning';
import { PortfolioStore } from '#store';
import { headlineOf, type Headline } from './headline.js';

/** The newest kept plan in a few figures. A kept plan never changes, so its figures are read once, not with every page. */
@Injectable()
export class NewestPlan {
  #known: Headline | null = null;

  constructor(private readonly store: PortfolioStore) {}

  /** Null where no plan is kept yet. */
  async headline(): Promise<Headline | null> {
    const [newest] = await this.store.plans();
    if (newest === undefined) return null;
    if (this.#known?.heading.id !== newest.id || this.#known.heading.hash !== newest.hash) {
      const kept = await this.store.loadPlan(newest.id);
      this.#known = kept === null ? null : headlineOf(newest, kept.body as Plan);
    }
    // Signing changes the heading and not the plan.
    return this.#known === null ? null : { ...this.#known, heading: newest };
  }
}
