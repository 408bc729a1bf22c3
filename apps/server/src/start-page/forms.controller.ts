import { Body, Controller, Header, HttpCode, Post, Redirect, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiExcludeController } from '@nestjs/swagger';
import { ImportDesk } from '../imports/import-desk.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { PlanOrders } from '../plans/plan-orders.js';
import { importPage } from './import-page.js';
import { page } from './page.js';

/** The two forms of the start page. They do what the API does and answer with a page. */
@ApiExcludeController()
@Controller()
export class FormsController {
  constructor(
    private readonly desk: ImportDesk,
    private readonly orders: PlanOrders,
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
  @Redirect('/', 303)
  async make(): Promise<void> {
    await this.orders.order({});
  }
}
