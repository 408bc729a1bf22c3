import { Body, Controller, HttpCode, Param, Post, UploadedFiles, UseInterceptors } from '@nestjs/common';
import { AnyFilesInterceptor } from '@nestjs/platform-express';
import { ApiBody, ApiConsumes, ApiExtraModels, ApiOkResponse, ApiOperation, ApiTags, getSchemaPath } from '@nestjs/swagger';
import { type Plan, relayPlan } from '#planning';
import { PortfolioStore } from '#store';
import { SentRecords } from '../imports/sent-records.js';
import { UPLOAD_LIMITS, type UploadedFile } from '../imports/upload.js';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException, type ProblemError } from '../problem/problem.js';
import { CutToQuery, RelayAnswer, RelayQuery } from './relay-answer.js';

/** @throws ProblemException naming each roll the plan does not cut, that stands twice or that is shorter */
function cutTo_mm(asked: readonly CutToQuery[], plan: Plan): Map<string, number> {
  const rolls = new Map(plan.cuts.flatMap((cut) => cut.rolls.map(({ roll, length_mm }): [string, number] => [roll, length_mm])));
  const errors = asked.flatMap(({ roll, cut_mm }, i): ProblemError[] => {
    const length_mm = rolls.get(roll);
    if (length_mm === undefined) return [{ code: 'unknown-roll', detail: `the plan cuts no roll ${roll}; it cuts ${[...rolls.keys()].join(', ') || 'none'}`, pointer: `/cutTo/${i}/roll` }];
    if (asked.findIndex((each) => each.roll === roll) < i) return [{ code: 'named-twice', detail: `roll ${roll} is named twice`, pointer: `/cutTo/${i}/roll` }];
    return cut_mm > length_mm ? [{ code: 'beyond-the-roll', detail: `cut_mm must be 0…${length_mm}, the length of roll ${roll}, got ${cut_mm}`, pointer: `/cutTo/${i}/cut_mm` }] : [];
  });
  if (errors.length > 0) throw new ProblemException(422, 'The request names a roll that cannot be used.', errors);
  return new Map(asked.map(({ roll, cut_mm }) => [roll, cut_mm]));
}

@ApiTags('crew')
@ApiExtraModels(CutToQuery, RelayQuery)
@Controller('api/plans')
export class RelayController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly plans: KeptPlans,
    private readonly sent: SentRecords,
  ) {}

  @Post(':id/relay')
  @HttpCode(200)
  @UseInterceptors(AnyFilesInterceptor({ limits: UPLOAD_LIMITS }))
  @ApiOperation({ summary: 'Field sizes in, layout of the rest of the opened rolls out', description: 'Site records with field sizes as files; without files those already recorded. A piece within the allowance keeps its place. cutTo says how far a roll has been cut: nothing before that line moves; without it the whole roll may be laid again. Nothing is kept.' })
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody({ required: false, schema: { allOf: [{ $ref: getSchemaPath(RelayQuery) }, { type: 'object', properties: { files: { type: 'array', items: { type: 'string', format: 'binary' } } } }] } })
  @ApiOkResponse({ type: RelayAnswer })
  @ApiProblem(404)
  @ApiProblem(409, 'There is no portfolio yet')
  @ApiProblem(422, 'A row of the files, a roll or a length cannot be used')
  async relay(@Param('id') id: string, @UploadedFiles() files: UploadedFile[] | undefined, @Body() { cutTo = [] }: RelayQuery): Promise<RelayAnswer> {
    const { body: plan } = await this.plans.plan(id);
    const cut = cutTo_mm(cutTo, plan);
    const kept = await this.store.load();
    const { siteRecords: sizes } = files === undefined || files.length === 0 ? kept : await this.sent.read(files, 'siteRecords', kept);
    return relayPlan({ plan, sizes, cutTo_mm: cut });
  }
}
