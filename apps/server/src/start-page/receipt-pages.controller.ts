import { Controller, Get, Header, Param, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { receiptFigures } from '#planning';
import { KeptPlans } from '../plans/kept-plans.js';
import { OpenReceipts } from '../receipts/open-receipts.js';
import { page } from './page.js';
import { receiptPage, receiptsPage } from './receipt-page.js';

const PAGE = 'text/html; charset=utf-8';

/** Receipts as pages: what the API gives to programs, for a person to read. */
@ApiExcludeController()
@Controller('plans')
export class ReceiptPagesController {
  constructor(
    private readonly plans: KeptPlans,
    private readonly receipts: OpenReceipts,
  ) {}

  @Get(':id/receipts')
  @Header('Content-Type', PAGE)
  async list(@Param('id') id: string, @Query('part') part: unknown): Promise<string> {
    const { body } = await this.plans.plan(id);
    return page(`Receipts of ${body.name}`, receiptsPage(id, receiptFigures(body), typeof part === 'string' ? part : ''));
  }

  @Get(':id/receipts/:figure')
  @Header('Content-Type', PAGE)
  async one(@Param('id') id: string, @Param('figure') figure: string): Promise<string> {
    const receipt = await this.receipts.open(await this.plans.plan(id), figure);
    return page(receipt.title, receiptPage(id, receipt));
  }
}
