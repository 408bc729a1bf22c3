import { Body, Controller, HttpCode, Post, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiBody, ApiConsumes, ApiExtraModels, ApiOkResponse, ApiOperation, ApiTags, getSchemaPath } from '@nestjs/swagger';
import { Edge } from '../edge.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { ApiProblem } from '../problem/api-problem.js';
import { refusedAsProblem } from '../problem/refused.js';
import { RequestPool } from '../work/request-pool.js';
import { NowAnswerBody, NowQuery } from './now-answer.js';
import { ShelfNow } from './shelf-now.js';

@ApiTags('crew')
@ApiExtraModels(NowQuery)
@Controller('api/now')
export class NowController {
  constructor(
    private readonly shelf: ShelfNow,
    private readonly edge: Edge,
    private readonly pool: RequestPool,
  ) {}

  @Post()
  @HttpCode(200)
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  @ApiOperation({ summary: 'Some hours, some empty dwellings, film on the shelf: the best use of them', description: 'Rolls on the shelf as files with the columns of rolls.csv; without files what the newest plan left, else the inventory. Nothing is kept.' })
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody({ schema: { allOf: [{ $ref: getSchemaPath(NowQuery) }, { type: 'object', properties: { files: { type: 'array', items: { type: 'string', format: 'binary' } } } }] } })
  @ApiOkResponse({ type: NowAnswerBody })
  @ApiProblem(409, 'There is no portfolio yet')
  @ApiProblem(422, 'Hours, a dwelling or a row of the files cannot be used')
  async now(@UploadedFiles() files: UploadedFile[] | undefined, @Body() { hours, dwellings }: NowQuery): Promise<NowAnswerBody> {
    const stock = await this.shelf.film(files, dwellings);
    return refusedAsProblem(() => this.pool.run((planning, resolve) => planning.bestUse({ id: 'now', made: this.edge.now(), resolve }, { hours, dwellings, stock })));
  }
}
