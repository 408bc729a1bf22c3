import { Controller, Get, Header } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { PortfolioStore } from '#store';
import { Edge } from '../edge.js';
import { NewestPlan } from './newest-plan.js';
import { page, style } from './page.js';
import { startPage } from './start-page.js';

/** Pages for a person: what is in the database, and the ways on. */
@ApiExcludeController()
@Controller()
export class StartPageController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly newest: NewestPlan,
    private readonly edge: Edge,
  ) {}

  @Get()
  @Header('Content-Type', 'text/html; charset=utf-8')
  @Header('Cache-Control', 'no-store')
  async start(): Promise<string> {
    const [contents, plans, jobs, imports] = [await this.store.contents(), await this.store.plans(), await this.store.jobs(), await this.store.imports()];
    return page('Film Rollout', startPage({ contents, plans, jobs, imports, newest: await this.newest.headline(), key: this.edge.newId() }));
  }

  @Get('style.css')
  @Header('Content-Type', 'text/css; charset=utf-8')
  style(): string {
    return style;
  }
}
