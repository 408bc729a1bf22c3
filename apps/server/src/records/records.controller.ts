import { Controller, Delete, HttpCode, Param, Post, Query, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiOperation, ApiProperty, ApiTags } from '@nestjs/swagger';
import { PortfolioStore } from '#store';
import { ImportAnswer, importAnswer } from '../imports/import-answer.js';
import { ImportDesk } from '../imports/import-desk.js';
import { ImportQuery } from '../imports/imports.controller.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { OnlyIfMatch } from '../portfolio/only-if-match.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';

export class UndoAnswer {
  @ApiProperty({ description: 'id of the import' }) import: string;
  @ApiProperty({ type: 'integer', description: 'records taken away' }) removed: number;
  @ApiProperty({ type: 'integer', description: 'records as they were before' }) restored: number;
  @ApiProperty({ type: 'integer', description: 'records left, because they were changed since' }) keptAsChanged: number;
}

@ApiTags('crew')
@Controller('api')
export class RecordsController {
  constructor(
    private readonly desk: ImportDesk,
    private readonly store: PortfolioStore,
  ) {}

  @Post('records')
  @HttpCode(200)
  @OnlyIfMatch()
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  @ApiOperation({ summary: 'Send what the crew found or did', description: 'Tables of site records whatever their names: field sizes, done, no access, defects, broken panes, minutes, film used. GET /api/imports names the import that DELETE takes back.' })
  @ApiConsumes('multipart/form-data')
  @ApiBody({ schema: { type: 'object', properties: { files: { type: 'array', items: { type: 'string', format: 'binary' } } }, required: ['files'] } })
  @ApiOkResponse({ type: ImportAnswer })
  @ApiProblem(413, 'A file is too large')
  @ApiProblem(422, 'Nothing in the files can be used')
  async take(@UploadedFiles() files: UploadedFile[] | undefined, @Query() { dryRun = false }: ImportQuery): Promise<ImportAnswer> {
    return importAnswer(await this.desk.take(files, dryRun, { only: 'siteRecords' }), dryRun);
  }

  @Delete('imports/:id')
  @OnlyIfMatch()
  @ApiOperation({ summary: 'Take back what an import of site records did' })
  @ApiOkResponse({ type: UndoAnswer })
  @ApiProblem(404)
  @ApiProblem(409, 'The import cannot be taken back')
  async undo(@Param('id') id: string): Promise<UndoAnswer> {
    if (!(await this.store.imports()).some((each) => each.id === id)) throw new ProblemException(404, `There is no import ${id}.`);
    return { import: id, ...(await this.store.undoImport(id)) };
  }
}
