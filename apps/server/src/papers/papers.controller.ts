import { Controller, Get, Param, Query, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiProduces, ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import { english, isPaperName, isPrintable, paper, PAPER_NAMES, type PaperFormat } from '#papers';
import { Edge } from '../edge.js';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';

const PDF = 'application/pdf';
const ENDING = '.pdf';

export class PaperQuery {
  @ApiPropertyOptional({ enum: ['letter', 'a4'], description: 'size of the sheet; letter for a survey in inches, A4 otherwise' })
  @IsOptional()
  @IsIn(['letter', 'a4'], { message: 'format must be letter or a4' })
  format?: PaperFormat;
}

@ApiTags('plans')
@Controller('api/plans')
export class PapersController {
  constructor(
    private readonly plans: KeptPlans,
    private readonly edge: Edge,
  ) {}

  @Get(':id/papers')
  @ApiOperation({ summary: 'Addresses of the papers of a plan' })
  @ApiOkResponse({ schema: { type: 'array', items: { type: 'string' } } })
  @ApiProblem(404)
  async list(@Param('id') id: string): Promise<string[]> {
    await this.plans.plan(id);
    return PAPER_NAMES.map((name) => `/api/plans/${encodeURIComponent(id)}/papers/${name}${ENDING}`);
  }

  @Get(':id/papers/:file')
  @ApiOperation({ summary: 'A paper of a plan: crew sheets, cut list, labels, kit, notices, sheets for residents, survey sheet, memo, pictures' })
  @ApiParam({ name: 'file', enum: PAPER_NAMES.map((name) => name + ENDING) })
  @ApiProduces(PDF)
  @ApiOkResponse({ content: { [PDF]: { schema: { type: 'string', format: 'binary' } } } })
  @ApiProblem(404)
  @ApiProblem(409, 'The plan was kept by an earlier version and lacks what the papers print')
  @ApiProblem(422, 'The size of the sheet is not known')
  async one(@Param('id') id: string, @Param('file') file: string, @Query() { format }: PaperQuery): Promise<StreamableFile> {
    const name = file.endsWith(ENDING) ? file.slice(0, -ENDING.length) : '';
    if (!isPaperName(name)) throw new ProblemException(404, `There is no paper ${file}; there are ${PAPER_NAMES.map((n) => n + ENDING).join(', ')}.`);
    const { body } = await this.plans.plan(id);
    if (!isPrintable(body)) throw new ProblemException(409, `Plan ${id} was kept by an earlier version; make it again to print it.`);
    const { bytes } = await paper(name, body, { printed: new Date(this.edge.now()), format: format ?? null, texts: english });
    return new StreamableFile(bytes, { type: PDF, disposition: `inline; filename="${name}-${id.replace(/[^\w.-]/g, '_')}.pdf"` });
  }
}
