import { Controller, Get, HttpCode, Post, Query, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiOperation, ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { IsIn, IsOptional, IsString } from 'class-validator';
import { usableBills } from '#calc';
import { PortfolioStore } from '#store';
import { ImportAnswer, importAnswer } from '../imports/import-answer.js';
import { ImportDesk } from '../imports/import-desk.js';
import { ImportQuery } from '../imports/imports.controller.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { OnlyIfMatch } from '../portfolio/only-if-match.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { BillsAnswer, billsAnswer } from './bill-answer.js';

export class MeterQuery {
  @ApiPropertyOptional({ description: 'one meter' })
  @IsOptional()
  @IsString()
  meter?: string;
}

export class TakeBillsQuery extends ImportQuery {
  @ApiPropertyOptional({ description: 'the meter of files that name none' })
  @IsOptional()
  @IsString()
  meter?: string;

  @ApiPropertyOptional({ enum: ['day', 'block'], description: 'interval readings as days, or as the blocks they come in; day if left out' })
  @IsOptional()
  @IsIn(['day', 'block'], { message: 'by must be day or block' })
  by?: 'day' | 'block';
}

@ApiTags('bills')
@Controller('api/bills')
export class BillsController {
  constructor(
    private readonly desk: ImportDesk,
    private readonly store: PortfolioStore,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Bills kept, which of them may be compared with the weather, and why the others may not' })
  @ApiOkResponse({ type: BillsAnswer })
  @ApiProblem(404, 'There is no such meter')
  async list(@Query() { meter }: MeterQuery): Promise<BillsAnswer> {
    const kept = await this.store.find();
    if (meter !== undefined && kept?.meters.some(({ id }) => id === meter) !== true) throw new ProblemException(404, `There is no meter ${meter}.`);
    const bills = (kept?.bills ?? []).filter((bill) => meter === undefined || bill.meter === meter);
    return billsAnswer(bills, usableBills(bills));
  }

  @Post()
  @HttpCode(200)
  @OnlyIfMatch()
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  @ApiOperation({ summary: 'Send bills, get findings', description: 'Tables of bills whatever their names, and interval readings as XML. Odd bills are kept as sent and said with their days; nothing is averaged away.' })
  @ApiConsumes('multipart/form-data')
  @ApiBody({ schema: { type: 'object', properties: { files: { type: 'array', items: { type: 'string', format: 'binary' } } }, required: ['files'] } })
  @ApiOkResponse({ type: ImportAnswer })
  @ApiProblem(413, 'A file is too large')
  @ApiProblem(422, 'Nothing in the files can be used')
  async take(@UploadedFiles() files: UploadedFile[] | undefined, @Query() { dryRun = false, meter, by }: TakeBillsQuery): Promise<ImportAnswer> {
    const options = { only: 'bills', ...(meter === undefined ? {} : { meter }), ...(by === undefined ? {} : { by }) } as const;
    return importAnswer(await this.desk.take(files, dryRun, options), dryRun);
  }
}
