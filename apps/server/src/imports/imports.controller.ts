import { Controller, Get, HttpCode, Post, Query, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiOperation, ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { IsBoolean, IsOptional } from 'class-validator';
import { PortfolioStore } from '#store';
import { OnlyIfMatch } from '../portfolio/only-if-match.js';
import { ApiProblem } from '../problem/api-problem.js';
import { SentFlag } from '../problem/sent-number.js';
import { ImportAnswer, importAnswer, PastImportAnswer } from './import-answer.js';
import { ImportDesk } from './import-desk.js';
import { UPLOAD_LIMITS, type UploadedFile } from './upload.js';

export class ImportQuery {
  @ApiPropertyOptional({ description: 'true looks at the files and changes nothing' })
  @IsOptional()
  @SentFlag()
  @IsBoolean({ message: 'dryRun must be true or false' })
  dryRun?: boolean;
}

@ApiTags('imports')
@Controller('api/imports')
export class ImportsController {
  constructor(
    private readonly desk: ImportDesk,
    private readonly store: PortfolioStore,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Files taken in, newest first' })
  @ApiOkResponse({ type: [PastImportAnswer] })
  async list(): Promise<PastImportAnswer[]> {
    return (await this.store.imports()).map((each) => ({ ...each }));
  }

  @Post()
  @HttpCode(200)
  @OnlyIfMatch()
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  @ApiOperation({
    summary: 'Send survey files, get findings',
    description: 'Good rows are kept, bad rows come back with their reason. The same files twice change nothing. Send all files of a survey together: they name each other.',
  })
  @ApiConsumes('multipart/form-data')
  @ApiBody({ schema: { type: 'object', properties: { files: { type: 'array', items: { type: 'string', format: 'binary' } } }, required: ['files'] } })
  @ApiOkResponse({ type: ImportAnswer })
  @ApiProblem(413, 'A file is too large')
  @ApiProblem(422, 'Nothing in the files can be used')
  async take(@UploadedFiles() files: UploadedFile[] | undefined, @Query() { dryRun = false }: ImportQuery): Promise<ImportAnswer> {
    return importAnswer(await this.desk.take(files, dryRun), dryRun);
  }
}
