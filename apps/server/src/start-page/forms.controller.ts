import { Body, Controller, Header, HttpCode, Param, Post, Redirect, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiExcludeController } from '@nestjs/swagger';
import { ImportDesk } from '../imports/import-desk.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { JobRunner } from '../jobs/job-runner.js';
import { PlanOrders } from '../plans/plan-orders.js';
import { importPage } from './import-page.js';
import { page } from './page.js';

const textOf = (sent: unknown): string | undefined => (typeof sent === 'string' && sent !== '' ? sent : undefined);

/** The forms of the start page. They do what the API does and answer with a page. */
@ApiExcludeController()
@Controller()
export class FormsController {
  constructor(
    private readonly desk: ImportDesk,
    private readonly orders: PlanOrders,
    private readonly runner: JobRunner,
  ) {}

  @Post('imports')
  @HttpCode(200)
  @Header('Content-Type', 'text/html; charset=utf-8')
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  async take(@UploadedFiles() files: UploadedFile[] | undefined, @Body('dryRun') dryRun: unknown): Promise<string> {
    // Only the button that says so may change anything.
    const lookOnly = dryRun !== 'false';
    return page('Survey files', importPage(await this.desk.take(files, lookOnly), lookOnly));
  }

  @Post('plans')
  @Redirect('/#work', 303)
  async make(@Body('key') key: unknown, @Body('replan') replan: unknown): Promise<void> {
    const parent = textOf(replan);
    await this.orders.order(parent === undefined ? {} : { replan: parent }, textOf(key));
  }

  /** Sent twice, or after the work has ended, there is nothing left to stop, and the page shows that. */
  @Post('jobs/:id/stop')
  @Redirect('/#work', 303)
  async stop(@Param('id') id: string): Promise<void> {
    await this.runner.stop(id);
  }
}
